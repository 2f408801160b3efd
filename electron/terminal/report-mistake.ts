import { inspect } from "node:util";
import { visibleText } from "./visible-text.ts";

/** Writes a mistake of ours where the program was started; its message may hold a name from a file. */
export function reportMistake(error: unknown): void {
  console.error(visibleText(inspect(error)));
}

import { fstatSync, readFileSync } from "node:fs";
import { createInterface } from "node:readline";

/**
 * Calls `asked` whenever a person presses Enter where the program was started.
 * @returns whether anybody can: not where there is no input, nor behind other work in a terminal, where the system would
 * stop the program for reading
 */
export function whenEnterIsPressed(asked: () => void): boolean {
  const { stdin } = process;
  if (stdin.isTTY ? isBehindOtherWork() : !isPipe()) return false;
  // A terminal that is closed is no reason to end.
  stdin.on("error", () => {});
  createInterface({ input: stdin, terminal: false }).on("line", asked);
  return true;
}

/** Whether the terminal belongs to another process group now; known on Linux, elsewhere taken for not so. */
function isBehindOtherWork(): boolean {
  if (process.platform !== "linux") return false;
  // After the name in brackets: state, parent, process group, session, terminal, the terminal's process group.
  const fields = readFileSync("/proc/self/stat", "utf8").split(") ").at(-1)?.split(" ") ?? [];
  return fields[2] !== fields[5];
}

/** A program may hold the other end; a file or nothing at all never presses Enter. */
function isPipe(): boolean {
  const kind = fstatSync(0);
  return kind.isFIFO() || kind.isSocket();
}

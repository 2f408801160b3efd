import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { ToWeigh } from "./weakness.ts";

/**
 * Weighs a passphrase in a process that lives for this alone: the estimate needs a text, and the memory of a thread is
 * kept by its process after the thread has ended, texts included. Its dictionaries take about half a second.
 */
export function weighApart({ passphrase, known }: ToWeigh): Promise<string | undefined> {
  return new Promise((resolve, reject) => {
    const options = { env: { ...process.env, ELECTRON_RUN_AS_NODE: "1" }, windowsHide: true };
    const child = execFile(process.execPath, [programFile(), ...known], options, (error, said) => {
      if (error === null) resolve((JSON.parse(said) as { readonly weakness?: string }).weakness);
      else reject(error);
    });
    // One that ended before it read all of it is told of above.
    child.stdin?.on("error", () => undefined);
    child.stdin?.end(passphrase);
  });
}

/** Beside this module: as it was written, or built into the folder of the programs. */
function programFile(): string {
  const own = import.meta.url;
  return fileURLToPath(new URL(own.endsWith(".ts") ? "weighing-program.ts" : "weighing-program.js", own));
}

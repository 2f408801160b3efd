import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { projectRoot } from "../architecture/imports.ts";

/** Runs the built command line in a folder and returns what it printed and how it ended. */
export function runCommand(
  folder: string,
  parameters: readonly string[],
): { readonly stdout: string; readonly stderr: string; readonly status: number | null } {
  return spawnSync(process.execPath, [join(projectRoot, "dist/electron/command.js"), ...parameters], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
}

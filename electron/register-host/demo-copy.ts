import { rmSync } from "node:fs";
import { backupFolder, removeDatabase } from "../register/register-folder.ts";

/** Throws the demo's copy away with everything beside it. */
export function removeCopy(file: string): void {
  removeDatabase(file);
  rmSync(`${file}-lock`, { force: true });
  rmSync(backupFolder(file), { recursive: true, force: true });
}

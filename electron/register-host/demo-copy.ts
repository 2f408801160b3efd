import { createHash } from "node:crypto";
import { copyFileSync, existsSync, readdirSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { FoundSession } from "../files/read-folder.ts";
import { makeDemoRegister } from "../register/make-demo-register.ts";
import { backupFolder, demoOriginalStart, removeDatabase } from "../register/register-folder.ts";

/**
 * Puts a new copy of the demo world's register in its place. The register itself is made once for each version of the
 * demo's recordings and copied from then on, because making it takes seconds.
 */
export async function copyDemo(dataFolder: string, world: readonly FoundSession[], file: string): Promise<void> {
  const original = join(dataFolder, `${demoOriginalStart}${versionOf(world)}.sqlite`);
  if (!existsSync(original)) {
    const others = readdirSync(dataFolder).filter((name) => name.startsWith(demoOriginalStart));
    for (const name of others) rmSync(join(dataFolder, name), { recursive: true, force: true });
    const partial = `${original}-making`;
    removeCopy(partial);
    await makeDemoRegister(partial, world);
    renameSync(partial, original);
    removeCopy(partial);
  }
  removeCopy(file);
  copyFileSync(original, file);
}

/** Throws a copy away with everything beside it. */
export function removeCopy(file: string): void {
  removeDatabase(file);
  rmSync(`${file}-lock`, { force: true });
  rmSync(backupFolder(file), { recursive: true, force: true });
}

function versionOf(world: readonly FoundSession[]): string {
  const hash = createHash("sha256");
  for (const { folder, files, description } of world) {
    hash.update(JSON.stringify([folder, description, files.map(({ path, sha256 }) => [path, sha256])]));
  }
  return hash.digest("hex").slice(0, 16);
}

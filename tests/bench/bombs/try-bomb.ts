import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Bomb, layBomb } from "./make-bombs.ts";

export interface Met {
  readonly bytes: number;
  readonly sentence: string;
  /** Resident memory at its highest, above what the program had before. */
  readonly peakMegabytes: number;
  readonly seconds: number;
}

/** Gives a bomb to a process of its own. @throws Error where that process ends otherwise than by an answer */
export function tryBomb(bomb: Bomb): Met {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-bomb-"));
  try {
    const bytes = layBomb(folder, bomb);
    const child = spawnSync(process.execPath, [join(import.meta.dirname, "meet-bomb.ts"), bomb.kind, folder], {
      encoding: "utf8",
    });
    if (child.status !== 0) throw new Error(`${bomb.what}: ${child.stderr}`);
    return { bytes, ...(JSON.parse(child.stdout) as Omit<Met, "bytes">) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

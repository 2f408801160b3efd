import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { analyzeSession } from "../../core/analyze.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import { defaultSettings, type Settings } from "../../core/settings/settings.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { StatedOptions } from "../../core/stated/stated-options.ts";

/** The folder of examples that are tried where they are at hand, beside the project. */
export const sharedFolder = join(dirname(fileURLToPath(import.meta.url)), "../../../shared");

/** True where the folder of examples lies beside the project. */
export function hasShared(path: string): boolean {
  return existsSync(join(sharedFolder, path));
}

/** Which foot stood where in the worked examples, as their columns are named; the tester says so. */
export const statedFeet: SessionDescription = {
  plates: [
    { column: "left", foot: "left" },
    { column: "right", foot: "right" },
  ],
};

/** Analyses files given as bytes, as the command line would. */
export function analyzeBytes(
  files: Readonly<Record<string, Uint8Array>>,
  stated: StatedOptions = {},
  description: SessionDescription = {},
  settings: Settings = defaultSettings,
): SessionAnalysis {
  return analyzeSession(
    {
      folder: "",
      files: Object.entries(files).map(([path, bytes]) => ({
        path,
        bytes,
        sha256: createHash("sha256").update(bytes).digest("hex"),
      })),
      unreadable: [],
      description,
      descriptionFindings: [],
      stated,
    },
    settings,
  );
}

/** Bytes of one of the shared examples. */
export function sharedBytes(path: string): Uint8Array {
  return readFileSync(join(sharedFolder, path));
}

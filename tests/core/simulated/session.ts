import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { analyzeSession } from "../../../core/analyze.ts";
import type { SessionAnalysis } from "../../../core/session/session-analysis.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";
import type { StatedOptions } from "../../../core/stated/stated-options.ts";
import { projectRoot } from "../../architecture/imports.ts";

/** Analyses one folder of sample-traces, as it lies there or with another description or other bytes. */
export function analyzeSamples(
  folder: string,
  changes: {
    readonly description?: (own: SessionDescription) => SessionDescription;
    readonly stated?: StatedOptions;
    readonly files?: (name: string) => boolean;
    readonly bytes?: (name: string, own: Uint8Array) => Uint8Array;
    readonly settings?: Settings;
  } = {},
): SessionAnalysis {
  const path = join(projectRoot, "sample-traces", folder);
  const names = readdirSync(path).filter((name) => /\.(csv|txt)$/.test(name) && (changes.files?.(name) ?? true));
  const { description, findings } = parseSessionFile(readFileSync(join(path, "session.json")));
  return analyzeSession(
    {
      folder,
      files: names.sort().map((name) => {
        const own = readFileSync(join(path, name));
        const bytes = changes.bytes?.(name, own) ?? own;
        return { path: name, bytes, sha256: createHash("sha256").update(bytes).digest("hex") };
      }),
      unreadable: [],
      description: changes.description?.(description) ?? description,
      descriptionFindings: findings,
      stated: changes.stated ?? {},
    },
    changes.settings ?? defaultSettings,
  );
}

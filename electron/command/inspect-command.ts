import { engineVersion } from "../../core/ground/version.ts";
import { inspectFile } from "../../core/recording/inspect-file.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { documentFinding } from "../../core/sheet/document-finding.ts";
import { readSession } from "../files/read-folder.ts";
import { joinPath } from "../files/recording-names.ts";
import { withVisibleTexts } from "../terminal/visible-text.ts";
import { findSessions } from "./find-sessions.ts";
import type { InspectedFile } from "./inspected-file.ts";
import { inspectionText } from "./inspection-text.ts";
import { parseArguments } from "./parse-arguments.ts";
import { readLayouts } from "./read-layouts.ts";
import { choice, readStatedOptions } from "./stated-options.ts";
import type { Streams } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

const formats = ["text", "json"] as const;

/** Raised when a key of the JSON form changes its meaning or leaves, or one joins that every reader must expect; 2: answers. */
const inspectionSchemaVersion = 2;

/** Most samples whose values are printed. */
const mostSamples = 1000;

/** `counterpoise inspect`: what is understood of each file, without analysing it. */
export function inspectCommand(typed: readonly string[], streams: Streams): number {
  const { options, positionals } = parseArguments(typed, [
    "rate",
    "unit",
    "columns",
    "decimal-mark",
    "swap-plates",
    "resample",
    "mass",
    "layout",
    "samples",
    "format",
  ]);
  const stated = readStatedOptions(options);
  const request = {
    answers: { ...(stated.massKg !== undefined && { massKg: stated.massKg }), ...stated.layout },
    layouts: readLayouts(options.layout),
    sampleIndices: readSamples(options.samples),
  };
  const format = choice("--format", options.format ?? "text", formats);
  const sessions = findSessions(positionals, streams.say);

  let needsEyes = false;
  const inspected: InspectedFile[] = [];
  for (const listed of sessions) {
    const { folder, files, unreadable } = readSession(listed);
    for (const { path, reason } of unreadable) {
      needsEyes = true;
      streams.say(`${joinPath(folder, path)} was not read because it ${reason}.`);
    }
    for (const file of files) {
      const inspection = inspectFile(file, request, defaultSettings);
      needsEyes ||= inspection.findings.some((each) => each.severity === "refusal");
      const { sha256, bytes } = file;
      inspected.push({ file: joinPath(folder, file.path), sha256, bytes: bytes.byteLength, ...inspection });
    }
  }
  streams.out(
    format === "text" ? withVisibleTexts(inspected).map(inspectionText).join("\n") : inspectionJson(inspected),
  );
  return needsEyes ? 1 : 0;
}

function inspectionJson(files: readonly InspectedFile[]): string {
  const written = files.map((file) => ({
    ...file,
    findings: file.findings.map(documentFinding),
  }));
  const document = { schemaVersion: inspectionSchemaVersion, engine: { version: engineVersion }, files: written };
  return `${JSON.stringify(document, undefined, 2)}\n`;
}

/** `0,100,250`: samples counted from 0. */
function readSamples(typed: string | undefined): readonly number[] {
  if (typed === undefined) return [];
  const parts = typed.split(",").map((part) => part.trim());
  if (parts.length > mostSamples) throw new UsageError(`--samples takes at most ${mostSamples} samples.`);
  return parts.map((part) => {
    if (!/^\d{1,12}$/.test(part)) {
      throw new UsageError(`--samples is written like 0,100,250, samples counted from 0; "${part}" is none.`);
    }
    return Number(part);
  });
}

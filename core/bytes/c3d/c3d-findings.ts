import { type Finding, proseFinding } from "../../ground/finding.ts";
import { listInWords } from "../../ground/plain-words.ts";
import type { ParameterDefect } from "./parameters.ts";

const exportAgain = "Export the recording again if figures look wrong.";
const copyAgain = "Copy the file again.";
/** No setting: it shortens a sentence. */
const placesNamed = 3;

/** Two places of the file state different things. */
export function contradiction(message: string, where: string): Finding {
  return proseFinding("parts-contradict", "warning", message, exportAgain, { where });
}

/** A factor or offset is missing, and the file's values were taken as if it were not needed. */
export function scalingAssumed(message: string, where: string): Finding {
  return proseFinding("scaling-assumed", "warning", message, exportAgain, { where });
}

export function parametersDamaged(defects: readonly ParameterDefect[]): Finding[] {
  const [first] = defects;
  if (first === undefined) return [];
  const named = listInWords(defects.slice(0, placesNamed).map(({ at, what }) => `${what} (byte ${at})`));
  const more = defects.length > placesNamed ? `, and ${defects.length - placesNamed} more` : "";
  return [
    proseFinding(
      "parameters-damaged",
      "note",
      `The parameter section is not quite in order: ${named}${more}.`,
      "Check what was understood of the file.",
      { where: `byte ${first.at}` },
    ),
  ];
}

export function unreadableC3d(message: string, where: string): Finding {
  return proseFinding("unreadable", "refusal", message, copyAgain, { where });
}

/** The file ends before its data begin, or within its first frame. */
export function nothingLeft(message: string): Finding {
  return proseFinding("truncated", "refusal", message, copyAgain, { where: "end of the file" });
}

export function framesMissing(stated: number, held: number, rateHz: number | undefined): Finding {
  const missing = stated - held;
  return proseFinding(
    "truncated",
    "warning",
    `The file states ${stated} frames and holds ${held}: the last ${missing === 1 ? "one is" : `${missing} are`} missing.`,
    "Copy the file again if more of the recording is expected.",
    { where: rateHz === undefined ? `frame ${held}` : `${(held / rateHz).toFixed(3)} s` },
  );
}

/** More frames than are stated: part of the recording would pass unseen. */
export function framesLeftOver(stated: number, surplus: number): Finding {
  return proseFinding(
    "parts-contradict",
    "warning",
    `Behind the ${stated} stated frames the file holds room for ${surplus} more, which were not read.`,
    exportAgain,
    { where: `frame ${stated}` },
  );
}

export function c3dWithoutForces(message: string, action: string): Finding {
  return proseFinding("no-force-platform", "refusal", message, action);
}

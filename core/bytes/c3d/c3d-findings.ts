import { type Finding, finding } from "../../ground/finding.ts";
import type { ParameterDefect } from "./parameters.ts";

/** No setting: it shortens a sentence. */
const placesNamed = 3;

export function parametersDamaged(defects: readonly ParameterDefect[]): Finding[] {
  const [first] = defects;
  if (first === undefined) return [];
  return [
    finding(
      "parameters-damaged",
      "note",
      {
        defects: defects.slice(0, placesNamed).map(({ at, what }) => ({ at, what })),
        others: Math.max(0, defects.length - placesNamed),
      },
      { place: { at: "byte", byte: first.at } },
    ),
  ];
}

/** The file ends before its data begin, or within its first frame. */
export function noFrames(stated: number): Finding {
  return finding("truncated/no-frames", "refusal", { stated }, { place: { at: "end of the file" } });
}

export function framesMissing(stated: number, held: number, rateHz: number | undefined): Finding {
  return finding(
    "truncated/frames-missing",
    "warning",
    { stated, held },
    {
      place: rateHz === undefined ? { at: "frame", frame: held } : { at: "time", seconds: held / rateHz, decimals: 3 },
    },
  );
}

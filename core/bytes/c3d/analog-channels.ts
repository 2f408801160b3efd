import { type Finding, finding } from "../../ground/finding.ts";
import type { AnalogChannel, FrameLayout } from "./c3d-file.ts";
import { continuedList, numberOf, numbersOf, textsOf } from "./parameter-values.ts";
import type { Parameters } from "./parameters.ts";

/**
 * Where the file does not say, an offset that would lie here without sign means integers without sign: the middle of 16
 * bits and above. At the upper end stand small negative offsets.
 */
const unsignedOffsets = { from: 30_000, below: 65_536 - 4096 };

/** How the analog samples become values: (stored − offset) × scale × general scale. */
export interface AnalogScaling {
  readonly channels: readonly AnalogChannel[];
  readonly generalScale: number;
  readonly isUnsigned: boolean;
  readonly findings: readonly Finding[];
}

export function readAnalogScaling(parameters: Parameters, { channelCount, dataType }: FrameLayout): AnalogScaling {
  const findings: Finding[] = [];
  const general = numberOf(parameters, "ANALOG:GEN_SCALE", "signed");
  if (general === undefined) {
    const place = { at: "name", name: "ANALOG:GEN_SCALE" } as const;
    findings.push(finding("scaling-assumed/general-scale", "warning", {}, { place }));
  }
  const format = textsOf(parameters, "ANALOG:FORMAT")?.[0]?.toUpperCase();
  const offsetsWith = (sign: "signed" | "unsigned"): readonly number[] | undefined =>
    continuedList((key) => numbersOf(parameters, key, sign), "ANALOG:OFFSET");
  const isUnsigned =
    format === "UNSIGNED" ||
    (format !== "SIGNED" &&
      dataType === "integer" &&
      parameters.entries.get("ANALOG:OFFSET")?.type === "integer" &&
      isUnsignedOffset(middle(offsetsWith("unsigned")?.slice(0, channelCount) ?? [])));
  const offsets = offsetsWith(isUnsigned ? "unsigned" : "signed") ?? [];
  const scales = continuedList((key) => numbersOf(parameters, key, "signed"), "ANALOG:SCALE") ?? [];
  const labels = continuedList((key) => textsOf(parameters, key), "ANALOG:LABELS") ?? [];
  const units = continuedList((key) => textsOf(parameters, key), "ANALOG:UNITS") ?? [];
  const missing = (name: string, list: readonly number[], taken: number): void => {
    if (list.length >= channelCount) return;
    const figures = { name, fromChannel: list.length + 1, toChannel: channelCount, taken };
    findings.push(finding("scaling-assumed/channels", "warning", figures, { place: { at: "name", name } }));
  };
  missing("ANALOG:OFFSET", offsets, 0);
  missing("ANALOG:SCALE", scales, 1);
  const channels = Array.from(
    { length: channelCount },
    (_, index): AnalogChannel => ({
      number: index + 1,
      label: labels[index] ?? "",
      unit: units[index] ?? "",
      scale: scales[index] ?? 1,
      offset: offsets[index] ?? 0,
    }),
  );
  return { channels, generalScale: general ?? 1, isUnsigned, findings };
}

function isUnsignedOffset(offset: number): boolean {
  return offset >= unsignedOffsets.from && offset < unsignedOffsets.below;
}

/** The median; 0 of nothing. */
function middle(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[sorted.length >> 1] ?? 0;
}

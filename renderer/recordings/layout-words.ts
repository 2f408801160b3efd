import type { SavedLayout } from "../../electron/boundary/workspace-view.ts";

/** What a layout answers: "1000 Hz · N · left 2+3, right 4 · plates exchanged". */
export function layoutWords({ answers }: SavedLayout): string {
  const { rateHz, unit, decimalMark, time, left, right, total, swapPlates, resample, resampleHz } = answers;
  const columns = Object.entries({ time, left, right, total }).flatMap(([role, key]) =>
    key === undefined ? [] : [`${role} ${key === "none" ? "not used" : key}`],
  );
  const parts = [
    rateHz === undefined ? "" : `${rateHz} Hz`,
    unit ?? "",
    decimalMark === undefined ? "" : `decimal ${decimalMark}`,
    columns.join(", "),
    swapPlates === true ? "left and right exchanged" : "",
    resampleHz === undefined ? (resample === true ? "even time base" : "") : `even time base at ${resampleHz} Hz`,
  ];
  return parts.filter((part) => part !== "").join(" · ");
}

/** What it is known by: "comma, decimal point · columns t, one, two". */
export function shapeWords({ shape }: SavedLayout): string {
  const { delimiter, decimalMark, columns, headerKeys } = shape;
  const names = columns.map(({ name, unit }) => (name === "" ? "unnamed" : unit === "" ? name : `${name} ${unit}`));
  return [
    `${delimiter === "none" ? "one column" : delimiter}, decimal ${decimalMark}`,
    `columns ${names.join(", ")}`,
    ...(headerKeys.length === 0 ? [] : [`header ${headerKeys.join(", ")}`]),
  ].join(" · ");
}

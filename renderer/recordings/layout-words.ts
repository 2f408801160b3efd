import type { SavedLayout } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;

/** What a layout answers: "1000 Hz · N · left 2+3, right 4 · plates exchanged". */
export function layoutWords({ answers }: SavedLayout): string {
  const { rateHz, unit, decimalMark, time, left, right, total, swapPlates, resample, resampleHz } = answers;
  const columns = Object.entries({ time, left, right, total }).flatMap(([role, key]) =>
    key === undefined ? [] : [`${role} ${key === "none" ? prose.notUsed : key}`],
  );
  const parts = [
    rateHz === undefined ? "" : prose.hertz(rateHz),
    unit ?? "",
    decimalMark === undefined ? "" : prose.decimal(decimalMark),
    columns.join(", "),
    swapPlates === true ? prose.leftAndRightExchanged : "",
    resampleHz === undefined ? (resample === true ? prose.evenTimeBase : "") : prose.evenTimeBaseAt(resampleHz),
  ];
  return parts.filter((part) => part !== "").join(" · ");
}

/** What it is known by: "comma, decimal point · columns t, one, two". */
export function shapeWords({ shape }: SavedLayout): string {
  const { delimiter, decimalMark, columns, headerKeys } = shape;
  const names = columns.map(({ name, unit }) => (name === "" ? prose.unnamed : unit === "" ? name : `${name} ${unit}`));
  return [
    prose.shape(delimiter === "none" ? prose.oneColumn : delimiter, decimalMark),
    prose.columns(names.join(", ")),
    ...(headerKeys.length === 0 ? [] : [prose.headerKeys(headerKeys.join(", "))]),
  ].join(" · ");
}

import { latestReference } from "../criteria/reference-value.ts";
import { formatPercent, formatSheetValue, noValue } from "../ground/format-number.ts";
import { measureEntry } from "../ground/measures/catalogue.ts";
import { dateInWords } from "../ground/plain-words.ts";
import { displayUnit, type UcumUnit } from "../ground/units.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { Comparison } from "../sides/comparison.ts";
import type { ReferenceValue } from "../stated/reference-value.ts";
import { english } from "../words/english.ts";
import type { SheetBlock, SheetCell } from "./document.ts";
import { groupName } from "./sheet-trials.ts";
import { limbOf, sideColumns } from "./symmetry-tables.ts";

/** Values of both sides per kilogram, and beside the earlier reference where one is known. */
export function absoluteValues(session: SessionResult): readonly SheetBlock[] {
  // A plate is nobody's leg: nothing of it stands per kilogram or beside an earlier value.
  const comparisons = session.comparisons.filter((each) => each.basis !== "plates");
  const [one] = comparisons;
  const references = comparisons.flatMap((each) => comparedReferences(each, session));
  const perBodyMass = comparisons
    .filter((each) => each.role === "criterion")
    .flatMap((each) => perBodyMassRow(each, session));
  if (one === undefined) return [];
  return [
    ...(perBodyMass.length === 0
      ? []
      : [
          {
            kind: "table",
            caption: "Values per kilogram of body mass",
            columns: [{ text: "Measure", align: "start", wide: true }, ...sideColumns(one)],
            rows: perBodyMass,
          } as const satisfies SheetBlock,
        ]),
    ...(references.length === 0
      ? []
      : [
          {
            kind: "table",
            caption: "Values beside earlier ones",
            columns: [
              { text: "Measure", align: "start", wide: true },
              ...sideColumns(one),
              { text: `${english.limbs.bearer(one.first)}, earlier`, align: "end" },
              { text: `${english.limbs.bearer(one.second)}, earlier`, align: "end" },
              { text: "earlier value", align: "start" },
            ],
            rows: references.map((each) => referenceRow(each, session)),
          } as const satisfies SheetBlock,
        ]),
  ];
}

type Row = { readonly cells: readonly SheetCell[] };

function perBodyMassRow(comparison: Comparison, session: SessionResult): readonly Row[] {
  const { first, second } = comparison;
  if (first.meanPerBodyMass === undefined && second.meanPerBodyMass === undefined) return [];
  const { unit } = measureEntry(`${comparison.measure}PerBodyMass`);
  const values = [first, second].map((side) => side.meanPerBodyMass);
  return [{ cells: [measureCell(comparison, unit, session), ...valueCells(comparison, values, unit)] }];
}

interface ComparedReferences {
  readonly comparison: Comparison;
  /** Of the first and the second side. */
  readonly references: readonly (ReferenceValue | undefined)[];
}

function comparedReferences(comparison: Comparison, session: SessionResult): readonly ComparedReferences[] {
  const stated = session.description.references ?? [];
  const references = [comparison.first, comparison.second].map((side) =>
    side.side === undefined ? undefined : latestReference(stated, comparison, side.side, comparison.unit),
  );
  return references.every((each) => each === undefined) ? [] : [{ comparison, references }];
}

function referenceRow({ comparison, references }: ComparedReferences, session: SessionResult): Row {
  const today = [comparison.first.mean, comparison.second.mean];
  const known = references.filter((each) => each !== undefined);
  const origins = new Set(known.map((each) => `${each.origin}, ${dateInWords(each.date)}`));
  return {
    cells: [
      measureCell(comparison, comparison.unit, session),
      ...valueCells(comparison, today, comparison.unit),
      ...references.map((reference, at) => earlierCell(today[at], reference)),
      { text: [...origins].join("; "), align: "start", emphasis: "muted" },
    ],
  };
}

/** The measure with its legs, and with its test and box where the session holds several. */
function measureCell(comparison: Comparison, unit: UcumUnit, session: SessionResult): SheetCell {
  const legs = comparison.legs === "both" ? "two legs" : "single-leg";
  const several = session.comparisons.some(
    (each) => each.test !== comparison.test || each.dropHeightMetres !== comparison.dropHeightMetres,
  );
  const of = several ? groupName(comparison) : legs;
  return {
    text: `${english.measures.fullLabel(comparison.measure)}, ${of}`,
    muted: displayUnit(unit).symbol,
    align: "start",
  };
}

function valueCells(
  comparison: Comparison,
  values: readonly (number | undefined)[],
  unit: UcumUnit,
): readonly SheetCell[] {
  return [comparison.first, comparison.second].map((side, at) => ({
    text: formatSheetValue(values[at], undefined, unit).value,
    align: "end",
    ...limbOf(comparison, side, at === 0),
  }));
}

function earlierCell(today: number | undefined, reference: ReferenceValue | undefined): SheetCell {
  if (reference === undefined) return { text: noValue, align: "end" };
  const { value } = formatSheetValue(reference.value, undefined, reference.unit);
  if (today === undefined) return { text: value, align: "end" };
  return { text: value, muted: `today ${formatPercent((100 * today) / reference.value)}`, align: "end" };
}

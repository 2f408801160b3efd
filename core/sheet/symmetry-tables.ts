import { formatPercent, formatSheetValue, noValue, percentDigits } from "../ground/format-number.ts";
import { asSentence, capitalised, keepUnits } from "../ground/plain-words.ts";
import { percentOf } from "../ground/threshold.ts";
import { displayUnit } from "../ground/units.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { Comparison, Interval, SideSummary } from "../sides/comparison.ts";
import { english } from "../words/english.ts";
import { statusCell } from "./criteria-today.ts";
import type { SheetBlock, SheetCell, SheetColumn, SymmetryLine } from "./document.ts";
import { criterionOf } from "./publish-comparison.ts";
import { groupName } from "./sheet-trials.ts";
import { type SymmetryAxis, symmetryAxis } from "./symmetry-line.ts";

/**
 * Side against side, one table for the two-leg and one for the single-leg trials of a test (and of each box), criteria
 * first.
 */
export function symmetryTables(session: SessionResult, settings: Settings): readonly SheetBlock[] {
  return (["both", "single"] as const).flatMap((legs) => {
    const ofLegs = session.comparisons.filter((each) => each.legs === legs);
    return [...new Set(ofLegs.map(groupName))].flatMap((name) => {
      const ofGroup = ofLegs.filter((each) => groupName(each) === name);
      const ordered = [...ofGroup].sort((a, b) => rank(a) - rank(b));
      return [table(ordered, session, settings), ...platesInDoubt(ordered), ...weakerSides(ordered), ...notes(ordered)];
    });
  });
}

function rank(comparison: Comparison): number {
  return comparison.role === "criterion" ? 0 : 1;
}

function table(comparisons: readonly Comparison[], session: SessionResult, settings: Settings): SheetBlock {
  const [one] = comparisons;
  if (one === undefined) throw new RangeError("A symmetry table needs a comparison.");
  const valuesOnly = isValuesOnly(one);
  const lines = comparisons.map((each) => symmetryLine(each, session, settings));
  const drawn = lines.filter((line) => line !== undefined);
  const axis = symmetryAxis(drawn);
  return {
    kind: "table",
    caption: `${capitalised(groupName(one))}: ${captionOf(one)}`,
    columns: [
      { text: "Measure", align: "start", wide: true },
      ...sideColumns(one),
      ...(valuesOnly ? [] : indexColumns(one, settings)),
    ],
    rows: comparisons.map((each, at) => {
      const line = lines[at];
      return { cells: cells(each, session, settings), ...(line && { line }) };
    }),
    ...(drawn.length > 0 && {
      axis: { ...axis, label: axisLabel(axis, drawn) },
    }),
  };
}

function isValuesOnly({ basis }: Comparison): boolean {
  return basis === "values-only" || basis === "plates";
}

function captionOf({ basis, legs }: Comparison): string {
  if (basis === "plates") return "values of each plate";
  return legs === "both" ? "limbs compared within each jump" : "trials of one limb against trials of the other";
}

function axisLabel({ low, high }: SymmetryAxis, lines: readonly SymmetryLine[]): string {
  const marks = [...new Set(lines.flatMap((line) => line.threshold ?? []))];
  const [mark] = marks;
  return marks.length === 1 && mark !== undefined
    ? keepUnits(`${low} to ${high} %, threshold ${percentDigits(mark)} %`)
    : keepUnits(`${low} to ${high} %`);
}

/** Headings of the two sides as a comparison names them. */
export function sideColumns(comparison: Comparison): readonly SheetColumn[] {
  return [comparison.first, comparison.second].map((side, at) => ({
    text: sideHeading(comparison, side, at === 0),
    align: "end",
    ...limbOf(comparison, side, at === 0),
  }));
}

function sideHeading(comparison: Comparison, side: SideSummary, first: boolean): string {
  if (comparison.basis !== "involved-uninvolved") return english.limbs.bearer(side);
  return `${english.limbs.bearer(side)}, ${first ? "involved" : "uninvolved"}`;
}

/** Which limb's colour a side wears: none but its own name where nobody or both are injured, none at all for a plate. */
export function limbOf(comparison: Comparison, { side }: SideSummary, first: boolean): Pick<SheetCell, "limb"> {
  if (comparison.basis === "involved-uninvolved") return { limb: first ? "involved" : "uninvolved" };
  return side === undefined ? {} : { limb: side };
}

function indexColumns(one: Comparison, settings: Settings): readonly SheetColumn[] {
  return [
    { text: "index", align: "end" },
    { text: `${percentDigits(100 * settings.statusConfidence)} % interval`, align: "end" },
    { text: one.basis === "left-right" ? "lower side" : "criterion", align: "start" },
  ];
}

function cells(comparison: Comparison, session: SessionResult, settings: Settings): readonly SheetCell[] {
  const { symbol } = displayUnit(comparison.unit);
  const label: SheetCell = {
    text: english.measures.fullLabel(comparison.measure),
    ...(symbol !== "" && { muted: symbol }),
    align: "start",
  };
  const sides = [comparison.first, comparison.second].map(
    (side, at): SheetCell => ({
      text: formatSheetValue(side.mean, undefined, comparison.unit).value,
      align: "end",
      ...limbOf(comparison, side, at === 0),
    }),
  );
  if (isValuesOnly(comparison)) return [label, ...sides];
  return [label, ...sides, ...indexCells(comparison, session, settings), lastCell(comparison, session)];
}

function indexCells(comparison: Comparison, session: SessionResult, settings: Settings): readonly SheetCell[] {
  if (comparison.difference !== undefined) {
    const { value, symbol } = formatSheetValue(comparison.difference, undefined, comparison.unit);
    return [
      { text: `${value}\u00a0${symbol}`, align: "end" },
      { text: "", align: "end" },
    ];
  }
  const marks = thresholds(comparison, session);
  const interval = intervalAt(comparison, settings.statusConfidence);
  const range = interval && `${percentDigits(interval.low, marks)} to ${percentDigits(interval.high, marks)}`;
  return [
    { text: formatPercent(comparison.index, marks), align: "end", emphasis: "strong" },
    { text: range ?? (comparison.index === undefined ? noValue : "unbounded"), align: "end", emphasis: "muted" },
  ];
}

function lastCell(comparison: Comparison, session: SessionResult): SheetCell {
  if (comparison.difference !== undefined) {
    const order = `${english.limbs.bearer(comparison.first)} minus ${english.limbs.bearer(comparison.second)}`;
    return { text: order, align: "start", emphasis: "muted" };
  }
  if (comparison.basis === "left-right") return { text: lowerSide(comparison), align: "start", emphasis: "muted" };
  const reader = criterionOf(session, comparison);
  return reader === undefined ? { text: "information", align: "start", emphasis: "muted" } : statusCell(reader);
}

function lowerSide({ index, first, second }: Comparison): string {
  if (index === undefined || index === 100) return "";
  return english.limbs.bearer(index < 100 ? first : second);
}

/** Values whose feet nobody knows for sure say so where they stand, not only on the first page. */
function platesInDoubt(comparisons: readonly Comparison[]): readonly SheetBlock[] {
  const byPlate = comparisons.find((each) => each.basis === "plates")?.intervalNote;
  const isMixed = comparisons.some((each) => each.plates !== undefined && each.plates !== "proved");
  const mixed =
    "Trials whose feet are in doubt are left out; there is no status until it is said which foot stood where.";
  const text = byPlate ?? (isMixed ? mixed : undefined);
  return text === undefined ? [] : [{ kind: "paragraph", tone: "caution", text }];
}

/** Nobody injured: the weaker side in words, for what a criterion could read. */
function weakerSides(comparisons: readonly Comparison[]): readonly SheetBlock[] {
  const items = comparisons
    .filter((each) => each.role === "criterion" && each.weaker !== "")
    .map((each) => `${english.measures.fullLabel(each.measure)}: ${asSentence(each.weaker)}`);
  return items.length === 0 ? [] : [{ kind: "list", tone: "plain", items }];
}

function symmetryLine(comparison: Comparison, session: SessionResult, settings: Settings): SymmetryLine | undefined {
  if (comparison.index === undefined) return undefined;
  const thick = intervalAt(comparison, settings.statusConfidence);
  const thin = intervalAt(comparison, settings.drawnConfidence);
  const [threshold] = thresholds(comparison, session);
  return {
    index: comparison.index,
    ...(thick && { thick: { low: thick.low, high: thick.high } }),
    ...(thin && { thin: { low: thin.low, high: thin.high } }),
    ...(threshold === undefined ? {} : { threshold }),
    ...(comparison.basis === "involved-uninvolved" && { limb: "involved" }),
  };
}

function intervalAt(comparison: Comparison, confidence: number): Interval | undefined {
  return comparison.intervals.find((each) => each.confidence === confidence);
}

function thresholds(comparison: Comparison, session: SessionResult): readonly number[] {
  const reader = criterionOf(session, comparison);
  const threshold = reader && percentOf(reader.criterion);
  return threshold === undefined || comparison.basis !== "involved-uninvolved" ? [] : [threshold];
}

/** Rows whose interval is missing, unbounded or from measurement uncertainty alone say so below the table. */
function notes(comparisons: readonly Comparison[]): readonly SheetBlock[] {
  const special = comparisons.filter(
    (each) =>
      !isValuesOnly(each) &&
      ((each.index !== undefined && (each.intervals.length === 0 || each.intervalFrom === "measurement uncertainty")) ||
        (each.index === undefined && each.difference === undefined)),
  );
  const texts = special.map((each) => ({ label: english.measures.fullLabel(each.measure), note: each.intervalNote }));
  const items = [...new Set(texts.map((each) => each.note))].map((note) => {
    const labels = texts.filter((each) => each.note === note).map((each) => each.label);
    return labels.length === comparisons.length ? note : `${labels.join("; ")}: ${note}`;
  });
  return items.length === 0 ? [] : [{ kind: "list", tone: "muted", items }];
}

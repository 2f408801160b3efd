import type { CriterionResult } from "../../core/criteria/criterion.ts";
import { comparisonOf } from "../../core/criteria/criterion-comparison.ts";
import { latestReference } from "../../core/criteria/reference-value.ts";
import { oppositeSide } from "../../core/ground/limb.ts";
import type { MeasureId } from "../../core/ground/measures/catalogue.ts";
import { measureEntry } from "../../core/ground/measures/catalogue.ts";
import { percentOf } from "../../core/ground/threshold.ts";
import type { UcumUnit } from "../../core/ground/units.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { SymmetryLine } from "../../core/sheet/document.ts";
import { boxHeightText } from "../../core/sides/box-height.ts";
import type { Comparison, Interval } from "../../core/sides/comparison.ts";
import type { ReferenceValue } from "../../core/stated/reference-value.ts";
import { dateWords, testWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.sides;

/** One line of the symmetry table. */
export interface SymmetryRow {
  readonly key: string;
  readonly label: string;
  readonly unit: UcumUnit;
  readonly comparison?: Comparison;
  /** Where the second value is an earlier one: the reference held against. */
  readonly reference?: ReferenceValue;
  readonly index?: number;
  /** The status confidence first, the drawn one second. */
  readonly intervals: readonly Interval[];
  readonly criterion?: CriterionResult;
}

/** The rows of one test with the same legs. */
export interface SymmetryRowGroup {
  readonly title: string;
  readonly rows: readonly SymmetryRow[];
}

/**
 * The rows that may meet a criterion: those of the criteria in their order, then what can be compared but has no
 * criterion in this set.
 */
export function criterionRows(session: SessionResult): readonly SymmetryRowGroup[] {
  const { comparisons, criteria } = session;
  const ofCriteria = criteria.map((result) => ({ result, row: criterionRow(result, session) }));
  const used = new Set(
    ofCriteria.flatMap(({ result, row }) => (result.criterion.kind === "absolute" ? [] : [row.comparison])),
  );
  const others = comparisons.filter((each) => each.role === "criterion" && !used.has(each));
  return grouped([
    ...ofCriteria.map(({ result, row }) => ({
      title: groupTitle(row.comparison ?? result.criterion),
      row,
    })),
    ...others.map((each) => ({ title: groupTitle(each), row: comparisonRow(each) })),
  ]);
}

/** The rows that inform only. */
export function informationRows(session: SessionResult): readonly SymmetryRowGroup[] {
  return grouped(
    session.comparisons
      .filter((each) => each.role === "information")
      .map((each) => ({ title: groupTitle(each), row: comparisonRow(each) })),
  );
}

function criterionRow(result: CriterionResult, session: SessionResult): SymmetryRow {
  const { criterion } = result;
  const comparison = comparisonOf(criterion, session.comparisons);
  if (criterion.kind === "symmetry") {
    const plain = comparison === undefined ? emptyRow(criterion.measure) : comparisonRow(comparison);
    return { ...plain, key: criterion.id, criterion: result };
  }
  if (criterion.kind === "absolute") {
    // a value is asked for, so the index between the sides has no place in this row
    return {
      ...emptyRow(criterion.measure),
      key: criterion.id,
      label: prose.againstASetValue(words.measures.fullLabel(criterion.measure)),
      ...(comparison === undefined ? {} : { comparison }),
      criterion: result,
    };
  }
  const { involved, references = [] } = session.description;
  const { unit } = measureEntry(criterion.measure);
  const reference =
    involved === "left" || involved === "right"
      ? latestReference(references, criterion, oppositeSide(involved), unit)
      : undefined;
  return {
    ...emptyRow(criterion.measure),
    key: criterion.id,
    label: prose.against(words.measures.fullLabel(criterion.measure), referenceWords(reference)),
    ...(comparison === undefined ? {} : { comparison }),
    ...(reference === undefined ? {} : { reference }),
    ...(result.estimate === undefined ? {} : { index: result.estimate }),
    intervals: result.interval === undefined ? [] : [result.interval],
    criterion: result,
  };
}

function referenceWords(reference: ReferenceValue | undefined): string {
  if (reference === undefined) return prose.earlierValue;
  const when = reference.origin === "pre-injury" ? prose.beforeInjury : prose.beforeOperation;
  return `${reference.side} ${when}, ${dateWords(reference.date)}`;
}

function emptyRow(measure: MeasureId): SymmetryRow {
  return { key: measure, label: words.measures.fullLabel(measure), unit: measureEntry(measure).unit, intervals: [] };
}

function comparisonRow(comparison: Comparison): SymmetryRow {
  return {
    key: `${comparison.test} ${comparison.legs} ${comparison.dropHeightMetres ?? ""} ${comparison.measure}`,
    label: words.measures.fullLabel(comparison.measure),
    unit: comparison.unit,
    comparison,
    ...(comparison.index === undefined ? {} : { index: comparison.index }),
    intervals: comparison.intervals,
  };
}

/** The test with its legs and, off a box, the box. */
function groupTitle({ test, legs, dropHeightMetres }: Pick<Comparison, "test" | "legs" | "dropHeightMetres">): string {
  const box = dropHeightMetres === undefined ? "" : prose.fromBox(boxHeightText(dropHeightMetres));
  return `${testWords(test, legs)}${box}`;
}

/** Why a row tells plates and no sides, or has no status, in a few words; "" where nothing is in doubt. */
export function doubtWords({ comparison }: SymmetryRow): string {
  const isDoubtful = comparison?.plates !== undefined && comparison.plates !== "proved";
  if (isDoubtful && comparison.basis !== "plates") return prose.someFeetInDoubt;
  switch (comparison?.plates) {
    case "contradicted":
      return prose.feetContradicted;
    case "unproved":
      return prose.feetUnproved;
    default:
      return "";
  }
}

function grouped(entries: readonly { readonly title: string; readonly row: SymmetryRow }[]): SymmetryRowGroup[] {
  const groups = new Map<string, SymmetryRow[]>();
  for (const { title, row } of entries) groups.set(title, [...(groups.get(title) ?? []), row]);
  return [...groups].map(([title, rows]) => ({ title, rows }));
}

/** What is drawn of a row; nothing where there is no index. */
export function symmetryLine(row: SymmetryRow): SymmetryLine | undefined {
  if (row.index === undefined) return undefined;
  const [thick, thin] = row.intervals;
  // without an involved side nothing is held against the threshold, so it is not drawn
  const threshold =
    row.criterion?.status === "not-applicable" ? undefined : row.criterion && percentOf(row.criterion.criterion);
  return {
    index: row.index,
    ...(thick === undefined ? {} : { thick }),
    ...(thin === undefined ? {} : { thin }),
    ...(threshold === undefined ? {} : { threshold }),
    ...(row.comparison?.basis === "left-right" ? {} : { limb: "involved" }),
  };
}

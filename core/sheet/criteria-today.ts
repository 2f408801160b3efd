import type { CriterionResult } from "../criteria/criterion.ts";
import { populationNotes } from "../criteria/population-notes.ts";
import { asSentence, keepUnits, sentences } from "../ground/plain-words.ts";
import type { SessionResult } from "../result/session-result.ts";
import { comparisonLimbCaution, ofComparisonLimb } from "../sides/other-injuries.ts";
import { english } from "../words/english.ts";
import type { SheetBlock, SheetCell } from "./document.ts";

/** What the criteria of the set say today: the gate and a stop first, then each criterion with its status and reason. */
export function criteriaToday(session: SessionResult): readonly SheetBlock[] {
  const { criteria, criteriaSet, gate, description } = session;
  const mismatch = sentences(...populationNotes(criteriaSet, description.athlete, description.date));
  const held = `Held against “${criteriaSet.name}”, version ${criteriaSet.version}, by ${criteriaSet.author}. Set for: ${asSentence(criteriaSet.population)}`;
  const stop =
    description.stopped === undefined ? "" : `The session was stopped: ${asSentence(description.stopped.reason)}`;
  const reason = asSentence(gate.reason);
  const partly = gate.open ? gate.closures.map((each) => each.reason) : [];
  const closed = gate.open
    ? sentences(
        stop,
        ...(partly.length === 0 ? [] : ["Some tests are closed today; their statuses are withheld.", ...partly]),
      )
    : sentences(
        "Statuses are withheld today.",
        reason.includes(stop) ? "" : stop,
        reason,
        "What was measured is on the following pages.",
      );
  // What every row about symmetry would say of the comparison limb stands once, among the facts of the session.
  const cautionsSaidOnce = ofComparisonLimb(description).map(comparisonLimbCaution);
  return [
    ...(criteria.length === 0 ? [] : [{ kind: "paragraph", tone: "muted", text: held } as const]),
    ...(mismatch === "" ? [] : [{ kind: "paragraph", tone: "caution", text: mismatch } as const]),
    ...(closed === "" ? [] : [{ kind: "paragraph", tone: "caution", text: closed } as const]),
    ...(criteria.length === 0
      ? [{ kind: "paragraph", tone: "plain", text: noCriterion(session) } as const]
      : [criteriaTable(criteria.map((each) => withoutCautions(each, cautionsSaidOnce)))]),
  ];
}

function withoutCautions(result: CriterionResult, cautionsSaidOnce: readonly string[]): CriterionResult {
  const caution = cautionsSaidOnce.reduce(
    (text, each) => text.replace(each, "").replaceAll("  ", " ").trim(),
    result.caution,
  );
  return { ...result, caution };
}

function noCriterion({ description }: SessionResult): string {
  return description.involved === undefined
    ? "The involved side is not stated, so no criterion is held against the session."
    : "The set holds no criterion for what was tested.";
}

function criteriaTable(criteria: readonly CriterionResult[]): SheetBlock {
  return {
    kind: "table",
    caption: "Criteria as they stand today",
    captionUnseen: true,
    columns: [
      { text: "Criterion", align: "start", wide: true },
      { text: "Today", align: "start" },
      { text: "Why", align: "start", wide: true },
    ],
    rows: sameForAll(criteria)
      ? [{ cells: rowCells(criteria[0], `All ${criteria.length} criteria of the set`, "") }]
      : criteria.map((result) => ({
          cells: rowCells(result, result.criterion.label, english.statuses.threshold(result.criterion)),
        })),
  };
}

/** One sentence says it once where every criterion stands alike for the same reason (nobody injured, a closed gate). */
function sameForAll(
  criteria: readonly CriterionResult[],
): criteria is readonly [CriterionResult, ...CriterionResult[]] {
  const [first] = criteria;
  const alike = (each: CriterionResult) =>
    each.status === first?.status && each.reason === first.reason && each.caution === first.caution;
  return criteria.length > 1 && criteria.every(alike);
}

function rowCells(result: CriterionResult, label: string, threshold: string): readonly SheetCell[] {
  return [
    { text: label, ...(threshold !== "" && { muted: threshold }), align: "start" },
    statusCell(result),
    { text: sentences(asSentence(result.reason), asSentence(result.caution)), align: "start" },
  ];
}

/** The status word with its mark, and what must stand beside it. */
export function statusCell(result: CriterionResult): SheetCell {
  const word = english.statuses.label(result.status);
  const beside = english.statuses.words(result).slice(word.length).trim();
  return {
    text: word,
    ...(beside !== "" && { muted: keepUnits(beside) }),
    align: "start",
    emphasis: "strong",
    status: result.status,
  };
}

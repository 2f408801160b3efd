import { formatSheetValue, noValue } from "../ground/format-number.ts";
import type { InvolvedSide, Limb } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { measureEntry } from "../ground/measures/catalogue.ts";
import { capitalised, sentences } from "../ground/plain-words.ts";
import type { TestCourse } from "../ground/test-course.ts";
import { startsFromBox, testFacts } from "../ground/test-kind.ts";
import { displayUnit } from "../ground/units.ts";
import type { SessionResult } from "../result/session-result.ts";
import { ownMeasure, trialBearer } from "../result/trial-bearer.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";
import type { SheetBlock, SheetCell } from "./document.ts";
import { groupName, type TrialGroup, trialGroups, trialName } from "./sheet-trials.ts";

/** Every attempt of the session, used or not, one table a test and number of legs; then what was not recognised. */
export function attemptsTables(session: SessionResult): readonly SheetBlock[] {
  const unknown = session.trials.filter((trial) => trial.test === undefined || trial.limb === undefined);
  return [
    ...trialGroups(session.trials).map((group) => attemptsTable(group, session)),
    ...(unknown.length === 0 ? [] : [unknownTable(unknown, session)]),
  ];
}

function unknownTable(unknown: readonly TrialResult[], session: SessionResult): SheetBlock {
  return {
    kind: "table",
    caption: "Recordings that could not be analysed",
    columns: [
      { text: "Recording", align: "start" },
      { text: "Why", align: "start", wide: true },
    ],
    rows: unknown.map((trial) => ({
      cells: [
        { text: trialName(trial, session.trials), align: "start" },
        { text: stateInWords(trial), align: "start" },
      ],
    })),
  };
}

type ShownMeasure = readonly [id: MeasureId, label: string];

const standing: readonly ShownMeasure[] = [
  ["jumpHeightImpulse", "Height by impulse"],
  ["timeToTakeoff", "Time to take-off"],
];

/** The measures by which the attempts of a test are told apart. */
const shown: Readonly<Record<TestCourse, readonly ShownMeasure[]>> = {
  dipAndJump: standing,
  holdAndJump: standing,
  dropAndJump: [
    ["jumpHeightFlightTime", "Height by flight time"],
    ["contactTime", "Contact time"],
    ["reactiveStrengthIndex", "Reactive strength index"],
  ],
  hops: [
    ["reactiveStrengthIndexBestFive", "Reactive strength index, best five"],
    ["hopsUsed", "Hops used"],
  ],
  dropAndLand: [
    ["peakLandingForce", "Peak landing force"],
    ["timeToStabilisation", "Time to stabilisation"],
  ],
};

function heading([id, label]: ShownMeasure): string {
  const { symbol } = displayUnit(measureEntry(id).unit);
  return symbol === "" ? label : `${label}, ${symbol}`;
}

function attemptsTable(group: TrialGroup, session: SessionResult): SheetBlock {
  const single = group.legs === "single";
  const led = !single && startsFromBox(group.test);
  const measures = shown[testFacts(group.test).course];
  const states = group.trials.map(stateInWords);
  const [state = ""] = states;
  // Said once where nothing else is to be said of any attempt.
  const alike = state.startsWith(used) && states.every((each) => each === state);
  return {
    kind: "table",
    caption: `${capitalised(groupName(group))}: every attempt${alike ? `, all ${state.replaceAll("; ", ", ")}` : ""}`,
    columns: [
      { text: "Attempt", align: "end" },
      { text: "Recording", align: "start", ...(alike && { wide: true }) },
      ...(single ? [{ text: "Limb", align: "start" } as const] : []),
      ...(led ? [{ text: "Leading leg", align: "start" } as const] : []),
      ...measures.map((each) => ({ text: heading(each), align: "end" }) as const),
      ...(alike ? [] : [{ text: "State", align: "start", wide: true } as const]),
    ],
    rows: group.trials.map((trial, at) => ({
      cells: [
        { text: attemptNumber(trial, group), align: "end" },
        { text: trialName(trial, session.trials), align: "start" },
        ...(single && trial.limb !== undefined ? [bearerCell(trial, session.description.involved)] : []),
        ...(led ? [leadCell(trial, session.description.involved)] : []),
        ...measures.map(([id]) => measureCell(trial, id, thresholdsOf(id, group, session))),
        ...(alike ? [] : [{ text: states[at] ?? "", align: "start" } as const]),
      ] satisfies readonly SheetCell[],
    })),
  };
}

function leadCell({ leadingLeg }: TrialResult, involved: InvolvedSide | undefined): SheetCell {
  return leadingLeg === undefined ? { text: "not stated", align: "start" } : limbCell(leadingLeg, involved);
}

/** Attempts are counted for each limb, in the order of the session; a practice jump is none. */
function attemptNumber(trial: TrialResult, group: TrialGroup): string {
  if (trial.practice === true) return noValue;
  const name = nameOf(trial);
  const attempts = group.trials.filter((each) => nameOf(each) === name && each.practice !== true);
  return String(attempts.indexOf(trial) + 1);
}

function nameOf(trial: TrialResult): string {
  const bearer = trialBearer(trial);
  return bearer === undefined ? "" : english.limbs.bearer(bearer);
}

/** The leg that jumped; the plate, without a limb's colour, while nobody knows which leg it was. */
function bearerCell(trial: TrialResult, involved: InvolvedSide | undefined): SheetCell {
  const side = trialBearer(trial)?.side;
  return side === undefined ? { text: nameOf(trial), align: "start" } : limbCell(side, involved);
}

function limbCell(limb: Limb, involved: InvolvedSide | undefined): SheetCell {
  const known = involved === "left" || involved === "right";
  return { text: limb, align: "start", limb: known ? (limb === involved ? "involved" : "uninvolved") : limb };
}

/** What the criteria ask of a measure, so that no attempt reads across it. */
function thresholdsOf(id: MeasureId, group: TrialGroup, { criteriaSet }: SessionResult): readonly number[] {
  return criteriaSet.criteria.flatMap((each) =>
    each.kind === "absolute" && each.measure === id && each.test === group.test && each.legs === group.legs
      ? [each.atLeast]
      : [],
  );
}

function measureCell(trial: TrialResult, id: MeasureId, thresholds: readonly number[]): SheetCell {
  const measure = ownMeasure(trial, id);
  if (measure === undefined) return { text: noValue, align: "end" };
  const { value, uncertainty } = formatSheetValue(measure.value, measure.uncertainty, measure.unit, thresholds);
  return { text: value, ...(uncertainty !== "" && { muted: `± ${uncertainty}` }), align: "end" };
}

const used = "used";

/** Whether a trial counts, and why not where it does not. */
function stateInWords(trial: TrialResult): string {
  if (trial.status === "refused") {
    const refusals = trial.findings.filter((finding) => finding.severity === "refusal");
    return sentences("Not analysed.", ...refusals.map((finding) => findingInWords(finding, english).message));
  }
  if (trial.excluded !== undefined) return `excluded: ${trial.excluded.reason}`;
  if (trial.held !== undefined) return `held out of means: ${trial.held.reason}`;
  if (trial.practice === true) return "practice jump";
  return [
    used,
    ...(trial.kept ? ["kept by a person although its weight differs"] : []),
    ...(trial.status === "partial" ? ["some measures could not be made"] : []),
    ...(trial.events.some((event) => event.from === "edited") ? ["event moved by hand"] : []),
    ...(trial.seen ? [] : ["not looked at yet"]),
  ].join("; ");
}

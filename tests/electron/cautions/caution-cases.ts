import type { CautionAnswers, GateOpening, KneeReading } from "../../../core/stated/cautions-schema.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { answersOf, changeAnswersOf, readingOf } from "../../core/gate/gates.ts";

/** One row of the table: what was answered or read, and what it does to two-leg jumps and to single-leg and drop tests. */
export interface CautionCase {
  readonly what: string;
  readonly description: SessionDescription;
  readonly twoLeg: "open" | "withheld";
  readonly singleAndDrop: "open" | "withheld";
  /** Words that stand on the sheet. */
  readonly sheet: string;
}

export const day = "2026-10-13";
const dayAfter = "2026-10-14";

interface Changes {
  readonly answers?: readonly CautionAnswers[];
  readonly readings?: readonly KneeReading[];
  readonly more?: Partial<SessionDescription>;
}

/** Everything asked twice with nothing that closes a test, and the changes; an empty list leaves the part out. */
function described({ answers, readings, more = {} }: Changes): SessionDescription {
  const given = answers ?? [answersOf(day), changeAnswersOf(day)];
  const read = readings ?? [readingOf(day, "before", 0), readingOf(day, "during", 0)];
  return {
    athlete: { code: "T-1" },
    involved: "right",
    date: day,
    ...(given.length > 0 && { cautions: { answers: given } }),
    ...(read.length > 0 && { readings: read }),
    simulated: true,
    ...more,
  };
}

const calm = readingOf(day, "before", 0);
const calmLater = readingOf(day, "during", 0);

const yesAnswers = [
  ["feverOrWound", "Stop; medical assessment now, by the local protocol."],
  ["givingWay", "The knee has given way."],
  ["locking", "The knee has locked."],
  ["newInjuryOrIllness", "A new injury or illness."],
  ["calfPainOrBreathlessness", "Stop; medical assessment now, by the local protocol."],
  ["restriction", "The surgeon restricts jumping or landing."],
] as const;

const opening = (code: string, level: number, doctor?: GateOpening["doctor"]): GateOpening => ({
  by: "K. L.",
  reason: "known since the last visit",
  meant: `${day}T09:50`,
  written: `${day}T09:51:00+02:00`,
  opens: [{ code, level }],
  ...(doctor && { doctor }),
});

const stopped = (kind: "knee" | "athlete" | "time" | "equipment") =>
  described({ more: { stopped: { reason: `enough because of the ${kind}`, kind } } });

/** Each caution at each moment that can hold it. What is expected follows PRODUCT, *What it never does* and *Cautions*. */
export const cautionCases: readonly CautionCase[] = [
  {
    what: "nothing asked",
    description: described({ answers: [], readings: [] }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "no record that they were asked",
  },
  {
    what: "everything asked, nothing against",
    description: described({}),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "answered, 13 October 2026",
  },
  {
    what: "an old record that somebody asked, without answers",
    description: described({ answers: [], more: { cautions: { answeredBy: "K. L.", date: day } } }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "asked by K. L.; no answers recorded",
  },
  {
    what: "answers of another day",
    description: described({ answers: [answersOf("2026-10-12"), changeAnswersOf("2026-10-12")] }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "Answers of another day do not count",
  },
  {
    what: "fever answered for another day, as after the date was corrected, and the rest stated as not known",
    description: described({
      answers: [
        answersOf("2026-10-12", { feverOrWound: "yes" }),
        { notKnown: true, by: "K. L.", written: "2026-10-20T08:00:00+02:00" },
      ],
      readings: [{ ...readingOf("2026-10-12", "before", 6), by: "K. L." }],
    }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "Stop; medical assessment now, by the local protocol.",
  },
  {
    what: "answers for the day, written later",
    description: described({
      answers: [{ ...answersOf(day), written: `${dayAfter}T08:00:00+02:00` }, changeAnswersOf(day)],
    }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "written later, on 1",
  },
  {
    what: "not known, stated for a past session",
    description: described({ answers: [{ notKnown: true, by: "K. L." }], readings: [] }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "not known, as K. L. states",
  },
  {
    what: "the second asking left out",
    description: described({ answers: [answersOf(day)], readings: [calm] }),
    twoLeg: "open",
    singleAndDrop: "withheld",
    sheet: "Not answered: pain, effusion and giving way.",
  },
  ...yesAnswers.map(
    ([name, sheet]): CautionCase => ({
      what: `yes to ${name} before the session`,
      description: described({ answers: [answersOf(day, { [name]: "yes" }), changeAnswersOf(day)] }),
      twoLeg: "withheld",
      singleAndDrop: "withheld",
      sheet,
    }),
  ),
  {
    what: "giving way, new before the first single-leg test",
    description: described({ answers: [answersOf(day), changeAnswersOf(day, "yes")] }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "The knee has given way.",
  },
  {
    what: "a yes followed by a second asking with no",
    description: described({ answers: [answersOf(day, { locking: "yes" }), answersOf(day), changeAnswersOf(day)] }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "The knee has locked.",
  },
  {
    what: "no landing practice",
    description: described({ answers: [answersOf(day, { landingPractice: "no" }), changeAnswersOf(day)] }),
    twoLeg: "open",
    singleAndDrop: "withheld",
    sheet: "No practice in landing in the last two weeks.",
  },
  {
    what: "a painkiller",
    description: described({ answers: [answersOf(day, { painkiller: "yes" }), changeAnswersOf(day)] }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "A painkiller or an injection in the last 24 hours.",
  },
  ...(["before", "during", "after"] as const).flatMap((moment): readonly CautionCase[] => [
    {
      what: `pain 3 ${moment}`,
      description: described({ readings: [calm, calmLater, readingOf(day, moment, 3)] }),
      twoLeg: "open",
      singleAndDrop: "withheld",
      sheet: "pain 3 of 10, not met",
    },
    {
      what: `pain 6 ${moment}, then 1`,
      description: described({ readings: [calm, calmLater, readingOf(day, moment, 6), readingOf(day, "after", 1)] }),
      twoLeg: "withheld",
      singleAndDrop: "withheld",
      sheet: "pain 6 of 10, not met",
    },
    {
      what: `effusion 1+ ${moment}, then none`,
      description: described({
        readings: [calm, calmLater, readingOf(day, moment, 0, "1+"), readingOf(day, "after", 0, "none")],
      }),
      twoLeg: "withheld",
      singleAndDrop: "withheld",
      sheet: "effusion 1+, not met",
    },
  ]),
  {
    what: "pain 7 and effusion 2+ the next day",
    description: described({ readings: [calm, calmLater, readingOf(dayAfter, "nextDay", 7, "2+")] }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "pain the next day 7 of 10, not met",
  },
  {
    what: "pain 5 elsewhere",
    description: described({ readings: [calm, calmLater, { ...readingOf(day, "before", 5), where: "elsewhere" }] }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "Pain elsewhere: 5 of 10.",
  },
  {
    what: "pain 5 in the other leg",
    description: described({ readings: [calm, calmLater, { ...readingOf(day, "before", 5), where: "other leg" }] }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "tests that load that leg are closed",
  },
  ...(["knee", "athlete"] as const).map(
    (kind): CautionCase => ({
      what: `stopped for the ${kind}`,
      description: stopped(kind),
      twoLeg: "withheld",
      singleAndDrop: "withheld",
      sheet: `The session was stopped: enough because of the ${kind}.`,
    }),
  ),
  ...(["time", "equipment"] as const).map(
    (kind): CautionCase => ({
      what: `stopped for ${kind}`,
      description: stopped(kind),
      twoLeg: "open",
      singleAndDrop: "open",
      sheet: `The session was stopped: Enough because of the ${kind}.`,
    }),
  ),
  {
    what: "week 13 after an operation, repair not known",
    description: described({ more: { operation: { date: "2026-07-14" } } }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "week 13 since the operation",
  },
  {
    what: "an operation without a date",
    description: described({ more: { operation: { repaired: "no" } } }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "the day of the operation is not known",
  },
  {
    what: "pain 4, opened by the named clinician",
    description: described({
      readings: [calm, calmLater, readingOf(day, "during", 4)],
      more: { gateOpenings: [opening("pain", 4)] },
    }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "Reason: Known since the last visit.",
  },
  {
    what: "locking, opened without a doctor",
    description: described({
      answers: [answersOf(day, { locking: "yes" }), changeAnswersOf(day)],
      more: { gateOpenings: [opening("locking", 1)] },
    }),
    twoLeg: "withheld",
    singleAndDrop: "withheld",
    sheet: "The knee has locked.",
  },
  {
    what: "locking, opened with a doctor",
    description: described({
      answers: [answersOf(day, { locking: "yes" }), changeAnswersOf(day)],
      more: { gateOpenings: [opening("locking", 1, { name: "Dr A. B.", date: day })] },
    }),
    twoLeg: "open",
    singleAndDrop: "open",
    sheet: "Agreed with Dr A. B., 13 October 2026.",
  },
];

import type { KneeRow } from "../criteria/knee-rows.ts";
import { cautionQuestions } from "../gate/caution-questions.ts";
import { clockOf, dayOf, weeksBetween } from "../gate/days.ts";
import type { Gate, OpenedClosure } from "../gate/gate.ts";
import { graftCaution } from "../gate/graft-caution.ts";
import type { CountedReading, KneeDay } from "../gate/knee-day.ts";
import { openQuestions } from "../gate/open-questions.ts";
import { asSentence, dateInWords, listInWords, sentences } from "../ground/plain-words.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { GivenAnswers } from "../stated/cautions-schema.ts";
import type { ReadingMoment } from "../stated/gate-words.ts";
import type { SessionDescription } from "../stated/session.ts";
import { english } from "../words/english.ts";

/** One line of the sheet's facts. */
interface Fact {
  readonly name: string;
  readonly value: string;
  /** A line of its own. */
  readonly wide?: true;
}

/** What the first page says of the cautions: the day's worst, every answer against jumping, and who opened what. */
export function gateFacts({
  description,
  gate,
  knee,
}: Pick<SessionResult, "description" | "gate" | "knee">): readonly Fact[] {
  return [
    { name: "Cautions", value: askedInWords(description, gate) },
    ...facts([
      ["The knee itself", kneeInWords(knee, gate.day)],
      ["Answered against jumping", againstInWords(gate)],
      ["Opened by", openingsInWords(gate.opened)],
    ]),
  ];
}

/** What the pages of numbers add: every answer and reading with its time, the operation, and whose limits counted. */
export function gateDetails(description: SessionDescription, gate: Gate): readonly Fact[] {
  return facts([
    ["Operation", sentences(operationInWords(description), graftCaution(description.operation))],
    ["Readings", readingsInWords(gate.day.readings, description.date)],
    ["Cautions", cautionsInWords(description, gate)],
    ["Limits", limitsInWords(gate)],
  ]);
}

function facts(all: readonly (readonly [name: string, value: string])[]): readonly Fact[] {
  return all.filter(([, value]) => value !== "").map(([name, value]) => ({ name, value, wide: true }));
}

/** "week 30 since the operation"; "" where nobody stated one. */
export function weeksInWords({ operation, date }: SessionDescription): string {
  if (operation === undefined) return "";
  if (operation.date === undefined) return "the day of the operation is not known";
  if (date === undefined) return `operated on ${dateInWords(operation.date)}`;
  const weeks = weeksBetween(operation.date, date);
  return weeks < 0 ? `before the operation of ${dateInWords(operation.date)}` : `week ${weeks} since the operation`;
}

/** The knee's own rows in a line, with their statuses; the day's worst where it has none. */
function kneeInWords(rows: readonly KneeRow[], day: KneeDay): string {
  if (rows.length === 0) return worstInWords(day);
  return rows
    .map(({ short, status }) =>
      status === "not-measured" ? `${short} not measured` : `${short}, ${english.statuses.label(status)}`,
    )
    .join("; ");
}

function worstInWords({ knee, otherLeg, effusion }: KneeDay): string {
  const pain = knee === undefined ? "pain not recorded" : `worst pain ${knee} of 10`;
  const other = otherLeg === undefined || otherLeg === 0 ? "" : `, in the other leg ${otherLeg}`;
  return `${pain}${other}; ${effusion === undefined ? "effusion not recorded" : `effusion ${effusion}`}`;
}

/** In a few words: when they were answered, or that they were not; the pages of numbers say who and what. */
function askedInWords({ cautions }: SessionDescription, gate: Gate): string {
  const { answered } = gate;
  const { given, notKnown } = answered;
  const last = given.at(-1);
  const open = openQuestions(gate).length > 0 ? "; some are open" : "";
  if (last !== undefined) return `answered, ${dateInWords(dayOf(last.meant))}${open}`;
  if (notKnown !== undefined) return `not known, as ${notKnown.by} states`;
  return cautions?.answeredBy === undefined
    ? "no record that they were asked"
    : `asked by ${cautions.answeredBy}; no answers recorded`;
}

function operationInWords({ operation, date }: SessionDescription): string {
  if (operation === undefined) return "";
  const { date: day, procedure, graft, repaired = "not known" } = operation;
  const what = [procedure, graft === undefined ? undefined : `${graft} graft`].filter((each) => each !== undefined);
  const repair = {
    yes: "meniscus or cartilage repaired",
    no: "no repair of meniscus or cartilage",
    "not known": "whether meniscus or cartilage was repaired is not known: the later weeks count",
  }[repaired];
  if (day === undefined)
    return sentences("Operated on; the day is not known.", asSentence([...what, repair].join(", ")));
  const weeks = date === undefined ? undefined : weeksBetween(day, date);
  const since =
    weeks === undefined ? "" : weeks < 0 ? "before the operation of " : `week ${weeks} since the operation of `;
  return asSentence([`${since}${dateInWords(day)}`, ...what, repair].join(", "));
}

const momentWords: Readonly<Record<ReadingMoment, string>> = {
  before: "before",
  during: "during",
  after: "after",
  nextDay: "the next day",
};

function readingsInWords(readings: readonly CountedReading[], date: string | undefined): string {
  if (readings.length === 0) return "Not recorded.";
  return readings.map((each) => asSentence(readingInWords(each, date))).join(" ");
}

/** "Pain 2 of 10, effusion trace, before, 09:40". */
export function readingInWords(reading: CountedReading, date: string | undefined): string {
  const { moment, meant, written, pain, where = "knee", effusion } = reading;
  const place = where === "knee" ? "" : where === "other leg" ? " in the other leg" : " elsewhere";
  const clock = meant === undefined ? "" : clockOf(meant);
  return [
    ...(pain === undefined ? [] : [`pain ${pain} of 10${place}`]),
    ...(effusion === undefined ? [] : [`effusion ${effusion}`]),
    meant === undefined ? "without a time" : momentWords[moment],
    ...(clock === "" ? [] : [clock]),
    ...(meant !== undefined && dayOf(meant) !== date ? [dateInWords(dayOf(meant))] : []),
    ...(moment !== "nextDay" && isWrittenLater(written, date) ? ["written later"] : []),
  ].join(", ");
}

function isWrittenLater(written: string | undefined, date: string | undefined): boolean {
  return written !== undefined && date !== undefined && dayOf(written) > dayOf(date);
}

function cautionsInWords({ cautions, date }: SessionDescription, gate: Gate): string {
  const { given, responses, notKnown, ofOtherDays } = gate.answered;
  const asked =
    given.length > 0
      ? given.map((each) => answersInWords(each, date)).join(" ")
      : cautions?.answeredBy === undefined
        ? "No record that they were asked for jump testing."
        : `Asked by ${cautions.answeredBy}${cautions.date === undefined ? "" : `, ${dateInWords(cautions.date)}`}; no answers were recorded.`;
  const open = openQuestions(gate);
  return sentences(
    asked,
    ...responses.map((each) => answersInWords(each, date)),
    cautions?.note === undefined ? "" : asSentence(cautions.note),
    notKnown === undefined ? "" : asSentence(`what was not asked is not known, as ${notKnown.by} states`),
    open.length === 0 ? "" : `Not answered: ${listInWords(open)}.`,
    ofOtherDays.length === 0 ? "" : "Answers of another day do not count, but what they say against jumping stays.",
  );
}

function answersInWords({ asked, meant, written, by, answers, note }: GivenAnswers, date: string | undefined): string {
  const when = [dateInWords(dayOf(meant)), clockOf(meant)].filter((each) => each !== "").join(", ");
  const later = isWrittenLater(written, date) ? `, written later, on ${dateInWords(dayOf(written))}` : "";
  const what = {
    session: "Answered for jump testing",
    change: "Asked again before single-leg or drop tests",
    response: "Asked about the day after the session before",
  }[asked];
  const painkiller = answers.painkiller === undefined && asked === "session" ? "Painkiller not asked." : "";
  return sentences(`${what}: ${by}, ${when}${later}.`, painkiller, note === undefined ? "" : asSentence(note));
}

function againstInWords({ answered, day }: Gate): string {
  const restrictions = answered.given.flatMap(({ restriction }) => restriction ?? []);
  return sentences(
    ...answered.against.map(({ name }) => asSentence(cautionQuestions[name].words)),
    ...restrictions.map((words) => `The restriction in its words: “${words.trim().replace(/\.$/, "")}”.`),
    day.elsewhere === undefined || day.elsewhere === 0 ? "" : `Pain elsewhere: ${day.elsewhere} of 10.`,
  );
}

function openingsInWords(opened: readonly OpenedClosure[]): string {
  const openings = [...new Set(opened.map(({ opening }) => opening))];
  return openings
    .map((opening) => {
      const { by, reason, meant, doctor } = opening;
      const what = opened.filter((each) => each.opening === opening).map(({ closure }) => closure.reason);
      const clock = clockOf(meant);
      const agreed = doctor === undefined ? "" : ` Agreed with ${doctor.name}, ${dateInWords(doctor.date)}.`;
      return `${by}${clock === "" ? "" : `, ${clock}`}, although: ${what.join(" ")} Reason: ${asSentence(reason)}${agreed}`;
    })
    .join(" ");
}

function limitsInWords({ limits }: Gate): string {
  const { painTwoLeg, painSingleLegAndDrop, effusion, setBy, setAt } = limits;
  const whose =
    setBy === undefined
      ? "The program's default (common practice), which nobody has confirmed for the clinic"
      : `The clinic's, set by ${setBy}${setAt === undefined ? "" : ` on ${dateInWords(setAt)}`}`;
  return `${whose}: pain ${painTwoLeg} of 10 for two-leg jumps, ${painSingleLegAndDrop} for single-leg and drop tests; effusion ${effusion}.`;
}

import { cautionQuestions } from "../gate/caution-questions.ts";
import { clockOf, dayOf, weeksBetween } from "../gate/days.ts";
import type { Gate, OpenedClosure } from "../gate/gate.ts";
import type { GivenAnswers, ReadingMoment } from "../gate/gate-schema.ts";
import type { CountedReading } from "../gate/knee-day.ts";
import { asSentence, dateInWords, listInWords, sentences } from "../plain-words.ts";
import type { SessionDescription } from "../session.ts";

/** One line of the sheet's facts. */
interface Fact {
  readonly name: string;
  readonly value: string;
  readonly wide: true;
}

/**
 * What the sheet says of the cautions: who answered what and when, every answer against jumping, the restriction in
 * its words, each reading with its time, what was opened by whom, and whose limits counted.
 */
export function gateFacts(description: SessionDescription, gate: Gate): readonly Fact[] {
  const facts: readonly (readonly [string, string])[] = [
    ["Since the operation", operationInWords(description)],
    ["Pain, effusion", readingsInWords(gate.day.readings, description.date)],
    ["Cautions", cautionsInWords(description, gate)],
    ["Answered against jumping", againstInWords(gate)],
    ["Opened by", openingsInWords(gate.opened)],
    ["Limits", limitsInWords(gate)],
  ];
  return facts.filter(([, value]) => value !== "").map(([name, value]) => ({ name, value, wide: true }));
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
    ...(moment === "nextDay" && meant !== undefined ? [dateInWords(dayOf(meant))] : []),
    ...(moment !== "nextDay" && isWrittenLater(written, date) ? ["written later"] : []),
  ].join(", ");
}

function isWrittenLater(written: string | undefined, date: string | undefined): boolean {
  return written !== undefined && date !== undefined && dayOf(written) > dayOf(date);
}

function cautionsInWords({ cautions, date }: SessionDescription, { answered }: Gate): string {
  const { given, notKnown, openAtFirst, openAtChange, ofOtherDays } = answered;
  const asked =
    given.length > 0
      ? given.map((each) => answersInWords(each, date)).join(" ")
      : cautions?.answeredBy === undefined
        ? "No record that they were asked for jump testing."
        : `Asked by ${cautions.answeredBy}${cautions.date === undefined ? "" : `, ${dateInWords(cautions.date)}`}; no answers were recorded.`;
  const open = [...new Set([...openAtFirst, ...openAtChange])];
  return sentences(
    asked,
    cautions?.note === undefined ? "" : asSentence(cautions.note),
    notKnown === undefined ? "" : asSentence(`what was not asked is not known, as ${notKnown.by} states`),
    open.length === 0 ? "" : `Not answered: ${listInWords(open)}.`,
    ofOtherDays.length === 0 ? "" : "Answers of another day do not count.",
  );
}

function answersInWords({ asked, meant, written, by, answers, note }: GivenAnswers, date: string | undefined): string {
  const when = [dateInWords(dayOf(meant)), clockOf(meant)].filter((each) => each !== "").join(", ");
  const later = isWrittenLater(written, date) ? `, written later, on ${dateInWords(dayOf(written))}` : "";
  const what = asked === "session" ? "Answered for jump testing" : "Asked again before single-leg or drop tests";
  const painkiller = answers.painkiller === undefined && asked === "session" ? "Painkiller not asked." : "";
  return sentences(
    `${what}: ${by.replace(/\.$/, "")}, ${when}${later}.`,
    painkiller,
    note === undefined ? "" : asSentence(note),
  );
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

import { formatValue, joinNumberText } from "../ground/format-number.ts";
import { asSentence, dateInWords } from "../ground/plain-words.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";
import { otherInjuryCautions } from "../sides/other-injuries.ts";
import { median } from "../sides/trial-statistic.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { SheetBlock } from "./document.ts";
import { gateFacts, weeksInWords } from "./gate-facts.ts";

const notStated = "not stated";

/** Who was tested and under which circumstances, as name and value. What nobody stated says so. */
export function sessionFacts(session: SessionResult): SheetBlock {
  const { description } = session;
  return {
    kind: "facts",
    items: [
      { name: "Athlete", value: athleteInWords(description.athlete), wide: true },
      { name: "Involved side", value: involvedInWords(description), wide: true },
      ...otherInjuryCautions(description).map((value) => ({ name: "Another injury", value, wide: true as const })),
      { name: "Body mass", value: bodyMassInWords(session) },
      ...gateFacts(session),
      ...(description.note === undefined
        ? []
        : [{ name: "Note", value: asSentence(description.note), wide: true } as const]),
    ],
  };
}

/** When, at which milestone and in which week since the operation, on one line. */
export function sessionTitle(description: SessionDescription): string {
  const { date, milestone } = description;
  const day = date === undefined ? "Date of the session not stated" : `Session of ${dateInWords(date)}`;
  return [day, milestone ?? "", weeksInWords(description)].filter((part) => part !== "").join(" · ");
}

/** The athlete's name where given, else the code. */
export function athleteTitle(athlete: SessionDescription["athlete"]): string {
  return athlete === undefined ? "Athlete not stated" : (athlete.name ?? athlete.code);
}

function athleteInWords(athlete: SessionDescription["athlete"]): string {
  if (athlete === undefined) return notStated;
  const born = athlete.birthYear === undefined ? undefined : `born ${athlete.birthYear}`;
  const about = [athlete.sex, born, athlete.sport].filter((each) => each !== undefined).join(", ");
  const who = athlete.name === undefined ? `code ${athlete.code}` : `${athlete.name}, code ${athlete.code}`;
  return about === "" ? who : `${who}; ${about}`;
}

function involvedInWords({ involved, injury }: SessionDescription): string {
  if (involved === undefined) return injury ?? notStated;
  if (involved === "none") return "nobody injured: left and right are compared";
  const side = involved === "both" ? "both knees" : involved;
  if (injury === undefined) return side;
  return injury.toLowerCase().includes(involved) ? injury : `${side}: ${injury}`;
}

function bodyMassInWords(session: SessionResult): string {
  const masses = session.trials
    .filter(countsInMeans)
    .flatMap((trial) => trial.measures.filter((measure) => measure.id === "bodyMass").map((measure) => measure.value));
  // The median: one weighing with a hand on a rail is no part of the athlete's mass.
  if (masses.length > 0) return `${joinNumberText(formatValue(median(masses), undefined, "kg"))}, on the plates`;
  const { massKg } = session.description;
  return massKg === undefined ? "not measured" : `${joinNumberText(formatValue(massKg, undefined, "kg"))}, entered`;
}

import type { Limb } from "../ground/limb.ts";
import { oppositeSide } from "../ground/limb.ts";
import { asSentence, capitalised, listInWords } from "../ground/plain-words.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { AnsweredCautions } from "./answered-cautions.ts";
import { cautionQuestions } from "./caution-questions.ts";
import type { Closure } from "./closure.ts";
import { closureCodes } from "./closures-to-open.ts";
import { weeksBetween } from "./days.ts";
import type { KneeDay } from "./knee-day.ts";
import { effusionRank, type LimitsInForce, mayBeYoungerThan } from "./limits.ts";
import { loadWords, singleLegAndDropLoads, type TestLoad, testLoads, trialLoad } from "./test-load.ts";

/** What of a trial decides whether the second asking was due. */
export interface GatedTrial {
  readonly test?: TestKind;
  readonly limb?: Limb;
}

/** Everything that closes tests is made of. */
export interface GateInput {
  readonly description: SessionDescription;
  readonly day: KneeDay;
  readonly answered: AnsweredCautions;
  readonly limits: LimitsInForce;
  readonly trials: readonly GatedTrial[];
  /** Entries that would decide the gate and could not be read, in words. */
  readonly unreadable: string;
  readonly settings: Settings;
}

/** Everything that closes tests for the day, before anybody opens any of it. */
export function closuresOf(input: GateInput): readonly Closure[] {
  return [
    ...stopped(input),
    ...unreadable(input),
    ...notAsked(input),
    ...answeredAgainst(input),
    ...painful(input),
    ...swollen(input),
    ...afterOperation(input),
    ...young(input),
  ];
}

const all = { level: 1, loads: testLoads } as const;

function stopped({ description: { stopped: stop } }: GateInput): readonly Closure[] {
  if (stop === undefined || stop.kind === "time" || stop.kind === "equipment") return [];
  const reason = `The session was stopped: ${closed(stop.reason)}`;
  return [{ ...all, code: "session-stopped", reason, openedBy: "clinician" }];
}

/** A person's words, closed with a full stop if they forgot it. */
function closed(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}

function unreadable({ unreadable: words }: GateInput): readonly Closure[] {
  if (words === "") return [];
  const reason = `What session.json says about ${words} cannot be read.`;
  return [{ ...all, code: "statement-unreadable", reason, openedBy: "answer" }];
}

function notAsked({ description, answered, trials }: GateInput): readonly Closure[] {
  const { openAtFirst, openAtChange, ofOtherDays } = answered;
  const held = "Jumps made already are kept and count once they are answered.";
  if (openAtFirst.length > 0) {
    const undated =
      description.date === undefined && ofOtherDays.length > 0
        ? "The session has no date, so answers of a day cannot be held to it."
        : "";
    const reason = `The cautions before jumping are not answered for this session (open: ${listInWords(openAtFirst)}). ${held} ${undated}`;
    return [{ ...all, code: "cautions-not-asked", reason: reason.trim(), openedBy: "answer" }];
  }
  const harder = trials.some((trial) => {
    const load = trialLoad(trial);
    return load !== undefined && singleLegAndDropLoads.includes(load);
  });
  if (!harder || openAtChange.length === 0) return [];
  const reason = `What can have changed was not asked before the first single-leg or drop test (open: ${listInWords(openAtChange)}). ${held}`;
  return [{ code: "change-not-asked", level: 1, loads: singleLegAndDropLoads, reason, openedBy: "answer" }];
}

/** Said wherever an answer asks for a doctor before anything else. */
export const medicalAssessmentNow = "Stop; medical assessment now, by the local protocol.";

function answeredAgainst({ answered }: GateInput): readonly Closure[] {
  return answered.against.flatMap(({ name, times }): readonly Closure[] => {
    const code = closureCodes[name];
    const { closes, words, needsDoctor, stopsForAssessment } = cautionQuestions[name];
    if (code === undefined || closes === "nothing") return [];
    const answeredSentence = `Answered: ${words}${name === "restriction" ? restrictionWords(answered) : ""}.`;
    const reason = stopsForAssessment ? `${medicalAssessmentNow} ${answeredSentence}` : answeredSentence;
    const loads = closes === "all tests" ? testLoads : singleLegAndDropLoads;
    return [{ code, level: times, loads, reason, openedBy: needsDoctor ? "clinician with doctor" : "clinician" }];
  });
}

/** The restriction in its own words, with a colon before them; "" where nobody gave any. */
function restrictionWords({ given }: AnsweredCautions): string {
  const words = given.flatMap(({ restriction }) => restriction ?? []).map((each) => each.trim().replace(/\.$/, ""));
  return words.length === 0 ? "" : `: “${words.join("; ")}”`;
}

/** While nobody has confirmed limits for the clinic, they are the program's. */
function whoseLimit({ setBy }: LimitsInForce): string {
  return setBy === undefined ? "the limit, the program's default" : "the clinic's limit";
}

function painful({ description: { involved }, day, limits }: GateInput): readonly Closure[] {
  const { painTwoLeg, painSingleLegAndDrop } = limits;
  const { knee = 0, otherLeg = 0 } = day;
  const limitsText = `${whoseLimit(limits)} (${painTwoLeg}; ${painSingleLegAndDrop} for single-leg and drop tests)`;
  const loadsAbove = (pain: number): readonly TestLoad[] =>
    pain > painTwoLeg ? testLoads : pain > painSingleLegAndDrop ? singleLegAndDropLoads : [];
  const closures: Closure[] = [];
  const loads = loadsAbove(knee);
  if (loads.length > 0) {
    const reason = `Pain ${knee} of 10 is above ${limitsText}.`;
    closures.push({ code: "pain", level: knee, loads, reason, openedBy: "clinician" });
  }
  const loadsOther = loadsAbove(otherLeg);
  if (loadsOther.length > 0) {
    const limbs: readonly Limb[] =
      involved === "left" || involved === "right" ? ["both", oppositeSide(involved)] : ["both", "left", "right"];
    const reason = `Pain ${otherLeg} of 10 in the other leg is above ${limitsText}: tests that load that leg are closed.`;
    closures.push({ code: "pain-other-leg", level: otherLeg, loads: loadsOther, limbs, reason, openedBy: "clinician" });
  }
  return closures;
}

function swollen({ description: { involved }, day: { effusion }, limits }: GateInput): readonly Closure[] {
  if (involved === "none" || effusion === undefined) return [];
  if (effusionRank(effusion) <= effusionRank(limits.effusion)) return [];
  const reason = `Effusion ${effusion} is above ${whoseLimit(limits)} (${limits.effusion}).`;
  return [{ ...all, code: "effusion", level: effusionRank(effusion), reason, openedBy: "clinician" }];
}

function afterOperation({ description, limits }: GateInput): readonly Closure[] {
  const { operation, date, involved } = description;
  if (operation === undefined || involved === "none") return [];
  if (operation.date === undefined) {
    const reason =
      "The knee was operated on, and nobody knows when: every jump is closed until a named clinician decides.";
    return [{ ...all, code: "operation-date-unknown", reason, openedBy: "clinician" }];
  }
  if (date === undefined) {
    const reason = "The session has no date, so the weeks since the operation are unknown.";
    return [{ ...all, code: "session-date-unknown", reason, openedBy: "answer" }];
  }
  const weeks = weeksBetween(operation.date, date);
  if (weeks < 0) return [];
  const { repaired = "not known" } = operation;
  return testLoads.flatMap((load): readonly Closure[] => {
    const earliest = limits.earliestWeeks[load][repaired === "no" ? "plain" : "repaired"];
    if (weeks >= earliest) return [];
    const why = {
      yes: ", with meniscus or cartilage repaired",
      no: "",
      "not known": ", as it is not known whether meniscus or cartilage was repaired",
    }[repaired];
    const reason = `${capitalised(loadWords(load))} are closed until week ${earliest} after the operation${why}; this is week ${weeks}.`;
    return [{ code: `too-early-${load}`, level: earliest - weeks, loads: [load], reason, openedBy: "clinician" }];
  });
}

function young({ description, settings }: GateInput): readonly Closure[] {
  const years = settings.dropTestsClosedBelowYears;
  if (!mayBeYoungerThan(years, description) || description.involved === "none") return [];
  const loads = singleLegAndDropLoads.filter((load) => load !== "singleLegJump");
  const reason = asSentence(
    `drop tests and two-leg hops are closed where the athlete is or may be under ${years}, until a named clinician opens them`,
  );
  return [{ code: "under-16-drop-tests", level: 1, loads, reason, openedBy: "clinician" }];
}

import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { CautionAnswers, KneeReading } from "../../../core/stated/cautions-schema.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";

/** All cautions of a day answered so that nothing is closed, by an invented clinician. */
export function answersOf(date: string, changed: Partial<Record<string, "yes" | "no">> = {}): CautionAnswers {
  return {
    asked: "session",
    meant: `${date}T09:00`,
    written: `${date}T09:01:00+02:00`,
    by: "K. L.",
    answers: {
      feverOrWound: "no",
      givingWay: "no",
      locking: "no",
      newInjuryOrIllness: "no",
      calfPainOrBreathlessness: "no",
      restriction: "no",
      landingPractice: "yes",
      painkiller: "no",
      ...changed,
    },
  };
}

/** What can have changed, asked again before the first single-leg or drop test. */
export function changeAnswersOf(date: string, givingWay: "yes" | "no" = "no"): CautionAnswers {
  return {
    asked: "change",
    meant: `${date}T09:30`,
    written: `${date}T09:31:00+02:00`,
    by: "K. L.",
    answers: { givingWay },
  };
}

/** A reading of pain and effusion of a day. */
export function readingOf(date: string, moment: KneeReading["moment"], pain: number, effusion = "none"): KneeReading {
  return {
    moment,
    meant: `${date}T09:00`,
    written: `${date}T09:01:00+02:00`,
    by: "K. L.",
    pain,
    effusion: effusion as NonNullable<KneeReading["effusion"]>,
  };
}

/** Everything asked and answered twice on a day, with nothing that closes a test. */
export function askedAndOpen(date: string): Pick<SessionDescription, "cautions" | "readings"> {
  return {
    cautions: { answers: [answersOf(date), changeAnswersOf(date)] },
    readings: [readingOf(date, "before", 0), readingOf(date, "during", 0)],
  };
}

/** The statement that what was not asked is not known, as of a past session. */
export const notKnown: Pick<SessionDescription, "cautions"> = {
  cautions: { answers: [{ notKnown: true, by: "K. L." }] },
};

/** A gate that closes nothing. */
export const openGate = gateOf(notKnown, defaultSettings);

/** A gate that closes every test because the session was stopped. */
export function stoppedGate(reason: string) {
  return gateOf({ ...notKnown, stopped: { reason } }, defaultSettings);
}

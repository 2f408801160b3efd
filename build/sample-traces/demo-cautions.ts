import type { KneeReading } from "../../core/stated/cautions-schema.ts";
import type { EffusionGrade } from "../../core/stated/gate-words.ts";
import type { SessionDescription } from "../../core/stated/session.ts";

/** Who asks in the invented world. */
export const clinician = "sports physiotherapist, Grynnholm HK (invented)";

interface AskedOfDemo {
  /** Worst pain before and during the tests, 0 to 10. */
  readonly pain: readonly [before: number, during: number];
  /** Absent where nobody is injured: effusion, giving way and practice are then not asked. */
  readonly effusion?: EffusionGrade;
  /** False where only two-leg jumps from standing were done: nothing is asked a second time. */
  readonly askedAgain?: boolean;
}

/** The cautions of one invented session, asked and answered on its day; everything here is made up. */
export function demoCautions(
  date: string,
  { pain: [before, during], effusion, askedAgain = true }: AskedOfDemo,
): Pick<SessionDescription, "cautions" | "readings"> {
  const injured = effusion !== undefined;
  const [first, second] = [`${date}T09:40`, `${date}T10:05`];
  const reading = (moment: KneeReading["moment"], meant: string, pain: number): KneeReading => ({
    moment,
    meant,
    written: `${meant}:30+02:00`,
    by: clinician,
    pain,
    ...(effusion !== undefined && { effusion }),
  });
  const asked = (when: "session" | "change", meant: string, answers: Readonly<Record<string, "yes" | "no">>) => ({
    asked: when,
    meant,
    written: `${meant}:30+02:00`,
    by: clinician,
    answers,
  });
  const ofAnybody = { newInjuryOrIllness: "no", restriction: "no" } as const;
  const ofKnees = {
    feverOrWound: "no",
    givingWay: "no",
    locking: "no",
    ...ofAnybody,
    calfPainOrBreathlessness: "no",
    landingPractice: "yes",
    painkiller: "no",
  } as const;
  return {
    cautions: {
      answers: [
        asked("session", first, injured ? ofKnees : ofAnybody),
        ...(askedAgain ? [asked("change", second, injured ? { givingWay: "no" } : {})] : []),
      ],
    },
    readings: [
      reading("before", first, before),
      ...(askedAgain || during !== before ? [reading("during", second, during)] : []),
    ],
  };
}

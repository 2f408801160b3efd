import type { Closure } from "../../core/gate/closure.ts";
import type { CautionAddition } from "../../electron/cautions/caution-addition.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautionForms;

/** An opening as its form holds it. */
export interface WrittenOpening {
  /** Codes of the closures that are chosen. */
  readonly chosen: readonly string[];
  readonly by: string;
  readonly reason: string;
  readonly doctor: string;
  readonly agreed: string;
}

/** Nothing is chosen beforehand, and no name is supposed: a tester is not the treating clinician. */
export const noOpening: WrittenOpening = { chosen: [], by: "", reason: "", doctor: "", agreed: "" };

/** What a clinician can open; what only wants an answer is answered instead. */
export function openable(closures: readonly Closure[]): readonly Closure[] {
  return closures.filter(({ openedBy }) => openedBy !== "answer");
}

/** True where one of those chosen wants a doctor who agreed. */
export function wantsDoctor(closures: readonly Closure[], { chosen }: WrittenOpening): boolean {
  return closures.some(({ code, openedBy }) => openedBy === "clinician with doctor" && chosen.includes(code));
}

/** What is written, ready to be kept; a sentence where something is missing. */
export function openingFrom(
  written: WrittenOpening,
  closures: readonly Closure[],
  meant: string,
): { readonly addition: CautionAddition } | { readonly problem: string } {
  const opens = openable(closures).filter(({ code }) => written.chosen.includes(code));
  if (opens.length === 0) return { problem: prose.chooseWhatIsOpened };
  const [by, reason, doctor] = [written.by.trim(), written.reason.trim(), written.doctor.trim()];
  if (by === "") return { problem: prose.nameTheClinician };
  if (reason === "") return { problem: prose.writeReason };
  const needsDoctor = wantsDoctor(closures, written);
  if (needsDoctor && doctor === "") return { problem: prose.sayWhichDoctorAgreed };
  if (needsDoctor && !/^\d{4}-\d{2}-\d{2}$/.test(written.agreed)) return { problem: prose.sayWhenDoctorAgreed };
  if (needsDoctor && written.agreed > meant.slice(0, 10)) return { problem: prose.agreedBeforeTheJumps };
  return {
    addition: {
      opening: {
        by,
        reason,
        meant,
        ...(needsDoctor && { doctor: { name: doctor, date: written.agreed } }),
        opens: opens.map(({ code, level }) => ({ code, level })),
      },
    },
  };
}

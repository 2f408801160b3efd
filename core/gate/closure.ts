import type { Limb } from "../ground/limb.ts";
import type { TestLoad } from "./test-load.ts";

/** Stable public names of what closes a gate; those of a week carry the load they speak of. */
export type ClosureCode =
  | "session-stopped"
  | "statement-unreadable"
  | "cautions-not-asked"
  | "change-not-asked"
  | "session-date-unknown"
  | "fever-or-wound"
  | "giving-way"
  | "locking"
  | "new-injury-or-illness"
  | "calf-pain-or-breathlessness"
  | "surgeon-restriction"
  | "no-landing-practice"
  | "pain"
  | "pain-other-leg"
  | "effusion"
  | "operation-date-unknown"
  | "under-16-drop-tests"
  | `too-early-${TestLoad}`;

/** One reason why tests are closed for the day. */
export interface Closure {
  readonly code: ClosureCode;
  /** How bad it is; an opening holds up to the level it was given at. */
  readonly level: number;
  /** The tests it closes. */
  readonly loads: readonly TestLoad[];
  /** The limbs whose jumps it closes; absent: every limb. */
  readonly limbs?: readonly Limb[];
  /** One or two whole sentences. */
  readonly reason: string;
  /** Who can open it: nobody by a word (it wants an answer), the named clinician, or that one with a doctor. */
  readonly openedBy: "answer" | "clinician" | "clinician with doctor";
}

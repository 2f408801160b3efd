import type { WitnessedTrial } from "../../core/session/prove-trial-plates.ts";
import type { TrialWeightContext } from "../../core/weight/session-weighing.ts";
import type { FirstPass, WorkedSession } from "./session-work.ts";

/** What a helping thread is asked to do; it answers each in turn. */
export type JobRequest =
  | { readonly kind: "open"; readonly session: WorkedSession }
  | { readonly kind: "weigh"; readonly paths: readonly string[] }
  | { readonly kind: "analyze"; readonly files: readonly HashedPath[]; readonly weight: TrialWeightContext };

/** A recording as the first pass found it. */
export interface HashedPath {
  readonly path: string;
  readonly sha256: string;
}

/** The trials of one file. */
export interface AnalyzedFile {
  readonly path: string;
  readonly trials: readonly WitnessedTrial[];
}

/** The answer to each request. */
export interface JobAnswers {
  readonly open: null;
  readonly weigh: readonly FirstPass[];
  readonly analyze: readonly AnalyzedFile[];
}

/** What comes back over the channel: an answer, or the stack of a mistake of our own. */
export type JobReply = { readonly answer: JobAnswers[keyof JobAnswers] } | { readonly broken: string };

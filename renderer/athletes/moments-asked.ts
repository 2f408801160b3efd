import type { Protocol } from "../../core/protocol/protocol.ts";
import type { TrialResult } from "../../core/result.ts";
import { startsFromBox } from "../../core/sides/box-height.ts";
import type { CautionMoment, Cautions } from "./caution-questions.ts";

/** A moment at which the cautions are asked. */
export interface MomentAsked {
  readonly moment: CautionMoment;
  readonly answered?: Cautions;
  /** Not answered, and either the session begins with it or such jumps were recorded already. */
  readonly isDue: boolean;
}

/**
 * When the cautions are asked in a session: before it, and again before single-leg and drop tests where the protocol has
 * them or such trials were recorded.
 */
export function momentsAsked(
  protocol: Protocol | undefined,
  trials: readonly TrialResult[],
  cautions: readonly Cautions[],
): readonly MomentAsked[] {
  const planned = protocol?.tests ?? [];
  const single = trials.some(({ limb }) => limb === "left" || limb === "right");
  const drop = trials.some(({ test }) => test !== undefined && startsFromBox(test));
  const moments: readonly {
    readonly moment: CautionMoment;
    readonly isPlanned: boolean;
    readonly isRecorded: boolean;
  }[] = [
    { moment: "session", isPlanned: true, isRecorded: true },
    {
      moment: "single-leg tests",
      isPlanned: planned.some(({ legs }) => legs === "single"),
      isRecorded: single,
    },
    { moment: "drop tests", isPlanned: planned.some(({ test }) => startsFromBox(test)), isRecorded: drop },
  ];
  return moments
    .filter(({ isPlanned, isRecorded }) => isPlanned || isRecorded)
    .map(({ moment, isRecorded }) => {
      const answered = cautions.find(({ before }) => before === moment);
      return { moment, isDue: answered === undefined && isRecorded, ...(answered && { answered }) };
    });
}

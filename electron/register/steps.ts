/** The places at which a stop of the machine would fall between two steps of one promise. */
export const steps = [
  "about to commit",
  "committed",
  "copy written",
  "file flushed",
  "file named",
  "oldest backup removed",
  "conversion begun",
  "fields written again",
  "conversion ended",
  "keys wrapped again",
  "backup wrapped again",
  "backup written beside",
  "backup replaced",
  "log emptied",
  "file written anew",
  "erased from the register",
  "erasure ended",
  "copy made",
  "restoration prepared",
  "content replaced",
  "schema raised",
] as const;

export type Step = (typeof steps)[number];

let tell: ((step: Step) => void) | undefined;

/** Says that a step is done. Outside of tests nobody listens. */
export function reached(step: Step): void {
  tell?.(step);
}

/** For tests that stop the program between two steps. */
export function tellSteps(listener: ((step: Step) => void) | undefined): void {
  tell = listener;
}

import type { RecordingFile } from "../../core/recording/file.ts";
import type { Stated } from "../files/stored-session.ts";

/** What a step is about: one open session, or something that is more than one, in words ("the record of athlete A-1"). */
export type StepReach = { readonly folder: string } | { readonly beyond: string };

/** One gesture: what was stated before and after it. Derived numbers are never kept; they are computed again. */
export interface StatedStep {
  readonly reach: { readonly folder: string };
  readonly words: string;
  readonly before: Stated;
  readonly after: Stated;
  /** Recordings that the gesture took out of the session. */
  readonly takenOut?: readonly RecordingFile[];
}

/** One gesture that the register wrote down: its journal holds what was before and after. */
export interface KeptStep {
  readonly reach: StepReach;
  readonly words: string;
  /** The entry of the journal. */
  readonly sequence: number;
}

export type EditStep = StatedStep | KeptStep;

/** A step as it stands in the history, under a number of its own. */
export type NumberedStep = EditStep & { readonly number: number };

/** The steps that live in memory alone, with the number of the last one ever given. */
export interface HeldHistory {
  readonly done: readonly NumberedStep[];
  readonly undone: readonly NumberedStep[];
  readonly steps: number;
}

/** Most steps that can be taken back. */
const mostSteps = 500;

/**
 * Undo and redo as two lists of before/after data. Each session has its own order: what is offered is the newest step of
 * the session shown or of what reaches beyond sessions, never one of another session.
 */
export class EditHistory {
  #done: readonly NumberedStep[] = [];
  #undone: readonly NumberedStep[] = [];
  #steps = 0;

  /** Remembers a step that was just done; what had been undone of the same session, or beyond sessions, is gone. */
  record(step: EditStep): void {
    this.#steps += 1;
    this.#done = [...this.#done, { ...step, number: this.#steps }].slice(-mostSteps);
    const { reach } = step;
    this.#undone = "folder" in reach ? this.#undone.filter((each) => isOfAnother(each, reach.folder)) : [];
  }

  /** The step that undo would take while a session is shown; it stays where it is. */
  lastDone(shown: string): NumberedStep | undefined {
    return this.#done.findLast((step) => !isOfAnother(step, shown));
  }

  /** The step that redo would take while a session is shown; it stays where it is. */
  lastUndone(shown: string): NumberedStep | undefined {
    return this.#undone.findLast((step) => !isOfAnother(step, shown));
  }

  /** The newest step of the session alone. */
  lastDoneWithin(folder: string): NumberedStep | undefined {
    return this.#done.findLast((step) => isOf(step, folder));
  }

  lastUndoneWithin(folder: string): NumberedStep | undefined {
    return this.#undone.findLast((step) => isOf(step, folder));
  }

  /** The step was taken back. */
  undone(step: NumberedStep): void {
    this.#done = this.#done.filter((each) => each.number !== step.number);
    this.#undone = [...this.#undone, step];
  }

  /** The step was done again. */
  redone(step: NumberedStep): void {
    this.#undone = this.#undone.filter((each) => each.number !== step.number);
    this.#done = [...this.#done, step];
  }

  /** Forgets the steps of the register, which begins anew or was closed. */
  forgetKept(): void {
    this.#keepOnly((step) => !("sequence" in step));
  }

  /** Forgets the steps that one session made in memory. */
  forgetFolder(folder: string): void {
    this.#keepOnly((step) => "sequence" in step || step.reach.folder !== folder);
  }

  /** Forgets what had been undone of a session, so that it cannot come back over something newer. */
  forgetUndone(folder: string): void {
    this.#undone = this.#undone.filter((step) => !isOf(step, folder));
  }

  /** True when a step that can be taken back or done again speaks of this session. */
  concerns(folder: string): boolean {
    return [...this.#done, ...this.#undone].some((step) => isOf(step, folder));
  }

  /** Forgets everything. */
  clear(): void {
    this.#keepOnly(() => false);
  }

  /** The steps of sessions that live in memory alone; those of the register belong to its journal. */
  get held(): HeldHistory {
    const own = (steps: readonly NumberedStep[]) => steps.filter((step) => !("sequence" in step));
    return { done: own(this.#done), undone: own(this.#undone), steps: this.#steps };
  }

  /** Goes on where another history ended: no number is given twice. */
  takeOver({ done, undone, steps }: HeldHistory): void {
    [this.#done, this.#undone, this.#steps] = [done, undone, steps];
  }

  /** Everything as it is now, to come back to. @returns brings it back */
  snapshot(): () => void {
    const [done, undone, steps] = [this.#done, this.#undone, this.#steps];
    return () => {
      [this.#done, this.#undone, this.#steps] = [done, undone, steps];
    };
  }

  #keepOnly(isKept: (step: NumberedStep) => boolean): void {
    this.#done = this.#done.filter(isKept);
    this.#undone = this.#undone.filter(isKept);
  }
}

function isOf({ reach }: EditStep, folder: string): boolean {
  return "folder" in reach && reach.folder === folder;
}

/** True for a step of a session that is not this one. */
function isOfAnother({ reach }: EditStep, folder: string): boolean {
  return "folder" in reach && reach.folder !== folder;
}

import type { Finding } from "../core/finding.ts";
import type { SessionDescription } from "../core/session.ts";

/** What is said about a session, with what was found while reading it. */
export interface Stated {
  readonly description: SessionDescription;
  readonly findings: readonly Finding[];
}

/** One gesture: what was stated before and after it. Derived numbers are never kept; they are computed again. */
export interface StatedStep {
  readonly folder: string;
  readonly words: string;
  readonly before: Stated;
  readonly after: Stated;
}

/** One gesture that the register wrote down: its journal holds what was before and after. */
export interface KeptStep {
  /** The session it belongs to, where it belongs to one that is open. */
  readonly folder?: string;
  readonly words: string;
  readonly kept: true;
}

export type EditStep = StatedStep | KeptStep;

/** Most steps that can be taken back. */
const mostSteps = 500;

/** Undo and redo as two lists of before/after data. */
export class EditHistory {
  #done: EditStep[] = [];
  #undone: EditStep[] = [];

  /** Remembers a step that was just done; what had been undone is gone. */
  record(step: EditStep): void {
    this.#done = [...this.#done, step].slice(-mostSteps);
    this.#undone = [];
  }

  /** Takes the last step off the done list; undefined when there is none. */
  undo(): EditStep | undefined {
    const step = this.#done.pop();
    if (step !== undefined) this.#undone.push(step);
    return step;
  }

  /** Takes the last undone step; undefined when there is none. */
  redo(): EditStep | undefined {
    const step = this.#undone.pop();
    if (step !== undefined) this.#done.push(step);
    return step;
  }

  /** The step that undo would take; it stays where it is. */
  get lastDone(): EditStep | undefined {
    return this.#done.at(-1);
  }

  /** The step that redo would take; it stays where it is. */
  get lastUndone(): EditStep | undefined {
    return this.#undone.at(-1);
  }

  /** Forgets the steps of the register, which begins anew or was closed. */
  forgetKept(): void {
    const isInMemory = (step: EditStep) => !("kept" in step);
    this.#done = this.#done.filter(isInMemory);
    this.#undone = this.#undone.filter(isInMemory);
  }

  /** Forgets the steps that one session made in memory. */
  forgetFolder(folder: string): void {
    const isElsewhere = (step: EditStep) => "kept" in step || step.folder !== folder;
    this.#done = this.#done.filter(isElsewhere);
    this.#undone = this.#undone.filter(isElsewhere);
  }

  /** Forgets what had been undone, so that it cannot come back over something newer. */
  forgetUndone(): void {
    this.#undone = [];
  }

  /** True when a step that can be taken back or done again speaks of this session. */
  concerns(folder: string): boolean {
    return [...this.#done, ...this.#undone].some((step) => step.folder === folder);
  }

  /** Forgets everything. */
  clear(): void {
    this.#done = [];
    this.#undone = [];
  }

  get undoWords(): string {
    return this.lastDone?.words ?? "";
  }

  get redoWords(): string {
    return this.lastUndone?.words ?? "";
  }
}

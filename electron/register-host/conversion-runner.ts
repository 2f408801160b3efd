import { setImmediate as nextTurn } from "node:timers/promises";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { Register } from "../register/register.ts";
import { convertStep } from "../register/unfinished.ts";

/** A person who asked waits this long for the end; what takes longer goes on while the screens are used. */
const waitMilliseconds = 400;

/** Brings a register's fields to another protection step by step, and answers other requests between two steps. */
export class ConversionRunner {
  readonly #ended: () => void;
  #isRunning = false;
  #trouble = "";

  /** @param ended told when it has ended, well or not */
  constructor(ended: () => void) {
    this.#ended = ended;
  }

  /** Why it stopped before its end, in one sentence; it goes on when the register is next opened or unlocked. */
  get trouble(): string {
    return this.#trouble;
  }

  /** Goes on with what an earlier opening has left, where there is anything. */
  goOn(register: Register): void {
    if (register.conversion === undefined || this.#isRunning) return;
    this.run(stepsOf(register)).catch(() => undefined);
  }

  /**
   * Does the steps to their end.
   * @returns when they have ended, or when they take longer than a moment
   * @throws RequestRefused when they are refused within that moment, or others are under way
   */
  async run(steps: Generator<unknown>): Promise<void> {
    if (this.#isRunning)
      throw new RequestRefused("The register is just being brought under another protection; wait until that is done.");
    this.#isRunning = true;
    this.#trouble = "";
    const work = this.#work(steps);
    // A refusal after the answer was given is told by `trouble`.
    work.catch((error: unknown) => {
      if (!(error instanceof RequestRefused)) throw error;
    });
    const moment = new Promise((resolve) => setTimeout(resolve, waitMilliseconds).unref());
    await Promise.race([work, moment]);
  }

  async #work(steps: Generator<unknown>): Promise<void> {
    try {
      // Whoever unlocks gets an answer before the first step.
      do await nextTurn();
      while (!steps.next().done);
    } catch (error) {
      if (!(error instanceof RequestRefused)) throw error;
      this.#trouble = `The register is not yet wholly under its new protection: ${error.message}`;
      throw error;
    } finally {
      this.#isRunning = false;
      this.#ended();
    }
  }
}

function* stepsOf(register: Register): Generator<undefined> {
  while (convertStep(register)) yield;
}

/** A request that cannot be done as asked; the message is a plain sentence for the person at the screen. */
export class RequestRefused extends Error {
  override readonly name = "RequestRefused";
}

/**
 * Something on the machine stood in the way: a full disk, a file that may not be written to. Whoever meets it says what
 * went wrong and what to do; what is true of the work by then is said by whoever knows all that was done (`telling`).
 */
export class MachineTrouble extends RequestRefused {
  readonly trouble: string;
  readonly advice: string;

  /** @param truth what was and was not done; "" where that is not known here */
  constructor(trouble: string, advice = "", truth = "") {
    super([trouble, truth, advice].filter((part) => part !== "").join(" "));
    this.trouble = trouble;
    this.advice = advice;
  }
}

/**
 * The error to go on with where work ended in one: trouble of the machine with what is now true, in the place of what
 * an inner part of the work said; any other error as it is.
 */
export function telling(error: unknown, truth: string): unknown {
  return error instanceof MachineTrouble ? new MachineTrouble(error.trouble, error.advice, truth) : error;
}

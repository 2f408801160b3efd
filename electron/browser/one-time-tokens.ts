import { createHash, randomBytes } from "node:crypto";

interface Waiting {
  readonly until: number;
  readonly whenUsed: () => void;
}

/** Beyond this the oldest is dead: nobody opens so many tabs within the time one is good for. */
const mostWaiting = 32;

/** Tokens of 256 random bits, each good once and for a while. What is kept of one is its hash. */
export class OneTimeTokens {
  readonly #waiting = new Map<string, Waiting>();
  readonly #now: () => number;

  /** @param now milliseconds of a clock that only goes forward */
  constructor(now: () => number = () => performance.now()) {
    this.#now = now;
  }

  issue(lifetimeMilliseconds: number, whenUsed: () => void = () => {}): string {
    const token = randomBytes(32).toString("base64url");
    this.#waiting.set(hashOf(token), { until: this.#now() + lifetimeMilliseconds, whenUsed });
    for (const [oldest, { until }] of this.#waiting) {
      if (this.#waiting.size > mostWaiting || until < this.#now()) this.#waiting.delete(oldest);
    }
    return token;
  }

  /** @returns whether the token was good; from now on it is not */
  use(token: string): boolean {
    const key = hashOf(token);
    const found = this.#waiting.get(key);
    this.#waiting.delete(key);
    if (found === undefined || found.until < this.#now()) return false;
    found.whenUsed();
    return true;
  }
}

function hashOf(token: string): string {
  return createHash("sha256").update(token).digest("base64");
}

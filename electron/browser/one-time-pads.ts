import { randomBytes, randomFillSync } from "node:crypto";
import { padBytes } from "../boundary/masked-passphrases.ts";

/** Beyond this the oldest is overwritten: nobody sends so many passphrases at a time. */
const mostWaiting = 32;

/** Pads of random bytes, each good for one request and overwritten after it. */
export class OneTimePads {
  readonly #waiting = new Map<string, Uint8Array>();

  /** @returns the pad under the name it is asked for by; what is given out is a copy */
  issue(): { readonly name: string; readonly pad: Uint8Array } {
    const name = randomBytes(16).toString("base64url");
    const kept = randomFillSync(new Uint8Array(new ArrayBuffer(padBytes)));
    this.#waiting.set(name, kept);
    for (const [oldest, pad] of this.#waiting) {
      if (this.#waiting.size <= mostWaiting) break;
      pad.fill(0);
      this.#waiting.delete(oldest);
    }
    return { name, pad: Uint8Array.from(kept) };
  }

  /** Lends a pad once and overwrites it. @returns undefined where there is none of this name */
  use<Result>(name: string, work: (pad: Uint8Array) => Result): Result | undefined {
    const pad = this.#waiting.get(name);
    if (pad === undefined) return undefined;
    this.#waiting.delete(name);
    try {
      return work(pad);
    } finally {
      pad.fill(0);
    }
  }
}

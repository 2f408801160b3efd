import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";

/** The header a request carries the secret in; a page of another site cannot send it unasked. */
const secretHeader = "x-counterpoise-secret";

/** Who is let in: addressed to the letter, from the own page, and with the secret of this launch. */
export class Gate {
  readonly #host: string;
  /** Made anew at every launch, and given to a tab for a token. */
  readonly secret = randomBytes(32).toString("base64url");

  /** @param host the loopback address with its port */
  constructor(host: string) {
    this.#host = host;
  }

  /**
   * Exactly one `Host`, the own: a renamed address reaches nothing. Node keeps the first of several and says nothing of
   * the others, so they are counted as they were sent.
   */
  isAddressed({ rawHeaders, headers }: IncomingMessage): boolean {
    const hosts = rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === "host");
    return hosts.length === 1 && headers.host === this.#host;
  }

  comesFromOwnPage({ headers }: IncomingMessage): boolean {
    return headers.origin === `http://${this.#host}`;
  }

  /** Compared as hashes: equal lengths and equal time whatever was sent. */
  knowsSecret({ headers }: IncomingMessage): boolean {
    const sent = headers[secretHeader];
    return typeof sent === "string" && timingSafeEqual(hashOf(sent), hashOf(this.secret));
  }
}

function hashOf(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}

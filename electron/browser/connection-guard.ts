import type { IncomingMessage, Server, ServerResponse } from "node:http";

type Connection = IncomingMessage["socket"];

/** How many connections are held, and how long those on which nobody has shown the secret. */
export interface ConnectionLimits {
  readonly mostConnections: number;
  readonly silentMilliseconds: number;
  /** For the whole of one answer: a reader may be slow, but not endless. */
  readonly answerMilliseconds: number;
}

/** A tab holds six connections at most (from memory), so this is ten tabs; a program may open 1,024 files or fewer. */
export const usualLimits: ConnectionLimits = {
  mostConnections: 64,
  silentMilliseconds: 3_000,
  answerMilliseconds: 30_000,
};

/**
 * Keeps connections that ask for nothing from using up what the program needs for the person's own: any program of
 * this computer can open them. Whoever has not shown the secret is a stranger, and is let go after a silence; where all
 * places are taken, the stranger who came first makes room, and never a tab that has shown it.
 */
export class ConnectionGuard {
  readonly #limits: ConnectionLimits;
  /** In the order they came, each with what will close it. */
  readonly #strangers = new Map<Connection, NodeJS.Timeout>();
  readonly #known = new Set<Connection>();

  constructor(server: Server, limits: ConnectionLimits) {
    this.#limits = limits;
    server.on("connection", (connection: Connection) => this.#admit(connection));
    server.on("request", (request: IncomingMessage, response: ServerResponse) => {
      const { socket } = request;
      this.#giveTime(socket, this.#limits.answerMilliseconds);
      response.once("close", () => this.#giveTime(socket, this.#limits.silentMilliseconds));
    });
  }

  /** The other end has shown the secret, or a token: it stays as long as it likes. */
  know(connection: Connection): void {
    const closing = this.#strangers.get(connection);
    if (closing === undefined) return;
    clearTimeout(closing);
    this.#strangers.delete(connection);
    this.#known.add(connection);
  }

  #admit(connection: Connection): void {
    if (this.#strangers.size + this.#known.size >= this.#limits.mostConnections) {
      const [first] = this.#strangers.keys();
      if (first === undefined) {
        connection.destroy();
        return;
      }
      this.#forget(first);
      first.destroy();
    }
    this.#strangers.set(connection, this.#closing(connection, this.#limits.silentMilliseconds));
    connection.once("close", () => this.#forget(connection));
  }

  #giveTime(connection: Connection, milliseconds: number): void {
    const closing = this.#strangers.get(connection);
    if (closing === undefined) return;
    clearTimeout(closing);
    this.#strangers.set(connection, this.#closing(connection, milliseconds));
  }

  #closing(connection: Connection, milliseconds: number): NodeJS.Timeout {
    return setTimeout(() => connection.destroy(), milliseconds).unref();
  }

  #forget(connection: Connection): void {
    clearTimeout(this.#strangers.get(connection));
    this.#strangers.delete(connection);
    this.#known.delete(connection);
  }
}

import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { encodeMessage } from "../boundary/host-codec.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import { combinedWithPad, padHeader, passphrasesOf } from "../boundary/masked-passphrases.ts";
import { readRequestBody } from "../boundary/request-body.ts";
import { BeyondLimits } from "../bounded-json/read-json.ts";
import { handleRequest, type Outcome } from "../handlers/handle-request.ts";
import { readRendererFile } from "../program/renderer-files.ts";
import { securityHeaders } from "../program/security-headers.ts";
import { ConnectionGuard, type ConnectionLimits, usualLimits } from "./connection-guard.ts";
import { Gate } from "./gate.ts";
import { OneTimePads } from "./one-time-pads.ts";
import { OneTimeTokens } from "./one-time-tokens.ts";
import { readBody } from "./read-body.ts";

const loopbackAddress = "127.0.0.1";

/** The header a page brings its token in, to have the secret for it. */
const tokenHeader = "x-counterpoise-token";

/** How long a request may take to arrive, and how long a tab that has shown the secret may be silent. */
const patience = {
  headersTimeout: 5_000,
  requestTimeout: 300_000,
  keepAliveTimeout: 300_000,
  connectionsCheckingInterval: 1_000,
};

export interface LoopbackOptions {
  readonly handlers: HostHandlers;
  /** Folder of the built screens. */
  readonly rendererFolder: string;
  /** Called with exceptions, which are our own mistakes. */
  readonly report: (error: unknown) => void;
  /** Other than the usual limits, for tests. */
  readonly limits?: ConnectionLimits;
}

export interface LoopbackServer {
  readonly port: number;
  /**
   * An address that opens the application in one tab, once: its fragment, which browsers send to nobody, is a token that
   * the page exchanges for the secret.
   */
  newAddress(lifetimeMilliseconds: number, whenUsed?: () => void): string;
  close(): Promise<void>;
}

/**
 * Serves the application to this computer alone: a random port of the loopback address, a secret made anew at every
 * launch, `Host` and `Origin` checked to the letter against other sites and renamed addresses, and few connections.
 */
export async function startLoopbackServer(options: LoopbackOptions): Promise<LoopbackServer> {
  const server = createServer(patience);
  const guard = new ConnectionGuard(server, options.limits ?? usualLimits);
  const port = await listen(server);
  const host = `${loopbackAddress}:${port}`;
  const tokens = new OneTimeTokens();
  const entrance: Entrance = { gate: new Gate(host), tokens, guard, pads: new OneTimePads() };
  server.on("request", (request, response) => {
    answer(request, response, entrance, options).catch((error: unknown) => {
      options.report(error);
      response.destroy();
    });
  });
  return {
    port,
    newAddress: (lifetimeMilliseconds, whenUsed) => `http://${host}/#${tokens.issue(lifetimeMilliseconds, whenUsed)}`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error === undefined ? resolve() : reject(error)));
        server.closeAllConnections();
      }),
  };
}

interface Entrance {
  readonly gate: Gate;
  readonly tokens: OneTimeTokens;
  readonly guard: ConnectionGuard;
  readonly pads: OneTimePads;
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, loopbackAddress, () => {
      const address = server.address();
      if (typeof address === "object" && address !== null) resolve(address.port);
      else reject(new Error("The loopback server has no port."));
    });
  });
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  entrance: Entrance,
  options: LoopbackOptions,
): Promise<void> {
  if (!entrance.gate.isAddressed(request)) return refuse(response, 421, "This is not the address of the program.");
  const path = (request.url ?? "/").split("?", 1)[0] ?? "/";
  if (path.startsWith("/api/")) return answerRequest(request, response, path.slice("/api/".length), entrance, options);
  if (path === "/secret") return exchangeToken(request, response, entrance);
  if (path === "/pad") return givePad(request, response, entrance);
  if (request.method !== "GET" && request.method !== "HEAD") return refuse(response, 405, "Only reading is possible.");
  const file = await readRendererFile(options.rendererFolder, path);
  if (file === undefined) return refuse(response, 404, "There is no such page.");
  response.writeHead(200, {
    ...securityHeaders,
    "content-type": file.mediaType,
    "content-length": file.bytes.byteLength,
  });
  response.end(request.method === "HEAD" ? undefined : file.bytes);
}

/** Whether a request was posted by the own page; where it was not, that is answered. */
function isPostedByOwnPage(request: IncomingMessage, response: ServerResponse, gate: Gate): boolean {
  if (request.method !== "POST") refuse(response, 405, "Requests are posted.");
  else if (!gate.comesFromOwnPage(request)) refuse(response, 403, "The request comes from another page.");
  else return true;
  return false;
}

/** Gives the secret for a token that was not used before. */
function exchangeToken(request: IncomingMessage, response: ServerResponse, { gate, tokens, guard }: Entrance): void {
  if (!isPostedByOwnPage(request, response, gate)) return;
  const token = request.headers[tokenHeader];
  if (typeof token !== "string" || !tokens.use(token)) {
    refuse(response, 403, "This address was used before, or is too old.");
  } else {
    guard.know(request.socket);
    send(response, 200, "text/plain; charset=utf-8", new TextEncoder().encode(gate.secret));
  }
}

/** A pad for the passphrase of one request. */
function givePad(request: IncomingMessage, response: ServerResponse, { gate, pads }: Entrance): void {
  if (!isPostedByOwnPage(request, response, gate)) return;
  if (!gate.knowsSecret(request)) {
    refuse(response, 403, "The secret of this launch is missing or wrong.");
    return;
  }
  const { name, pad } = pads.issue();
  response.once("close", () => pad.fill(0));
  response.setHeader(padHeader, name);
  send(response, 200, "application/octet-stream", pad);
}

/** The request as it was meant. @returns undefined where a passphrase came without a pad of this program */
function unmasked(payload: unknown, { headers }: IncomingMessage, pads: OneTimePads): unknown {
  if (passphrasesOf(payload).length === 0) return payload;
  return pads.use(`${headers[padHeader]}`, (pad) => combinedWithPad(payload, pad));
}

async function answerRequest(
  request: IncomingMessage,
  response: ServerResponse,
  name: string,
  { gate, guard, pads }: Entrance,
  options: LoopbackOptions,
): Promise<void> {
  if (!isPostedByOwnPage(request, response, gate)) return;
  if (!gate.knowsSecret(request)) return refuse(response, 403, "The secret of this launch is missing or wrong.");
  guard.know(request.socket);
  const body = await readBody(request);
  if (body === undefined) {
    return refuse(
      response,
      413,
      "This is larger than 64 MB, the most that is taken in at a time; it was left out. Whatever else was chosen is not affected.",
    );
  }
  let payload: unknown;
  try {
    payload = unmasked(readRequestBody(body), request, pads);
  } catch (error) {
    if (error instanceof BeyondLimits) {
      return refuse(response, 413, `The request was not read: it ${error.message}. Do it in smaller parts.`);
    }
    return refuse(response, 400, "The request is not understood.");
  } finally {
    body.fill(0);
  }
  if (payload === undefined) return refuse(response, 400, "A passphrase came without a mask of this program.");
  const outcome = await handleRequest(options.handlers, name, payload, options.report);
  if (outcome.kind !== "done") return refuse(response, statusOf[outcome.kind], outcome.message);
  send(response, 200, "application/octet-stream", encodeMessage(outcome.reply));
}

const statusOf: Readonly<Record<Exclude<Outcome["kind"], "done">, number>> = {
  unknown: 404,
  invalid: 400,
  refused: 409,
  broken: 500,
};

/**
 * Refusals are a sentence as plain text, for the person at the screen. The connection ends with it, because what is
 * left unread of the request must not be taken for the next one.
 */
function refuse(response: ServerResponse, status: number, sentence: string): void {
  response.setHeader("connection", "close");
  send(response, status, "text/plain; charset=utf-8", new TextEncoder().encode(sentence));
}

function send(response: ServerResponse, status: number, mediaType: string, content: Uint8Array): void {
  response.writeHead(status, {
    ...securityHeaders,
    "content-type": mediaType,
    "content-length": content.byteLength,
  });
  response.end(content);
}

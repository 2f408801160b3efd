import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";
import { handleRequest, type Outcome } from "../handle-request.ts";
import { decodeMessage, encodeMessage } from "../host-codec.ts";
import type { HostHandlers } from "../host-handlers.ts";
import { readRendererFile } from "../renderer-files.ts";
import { securityHeaders } from "../security-headers.ts";

/** The rest is room for what stands beside a recording. */
const bodyByteLimit = recordingByteLimit + 65_536;

/** A body beyond this is cut off all the same. */
const mostThrownAway = 4 * 1024 * 1024 * 1024;

const longestSilenceMilliseconds = 500;

const loopbackAddress = "127.0.0.1";

/** The header a request carries the secret in; a page of another site cannot send it unasked. */
const secretHeader = "x-counterpoise-secret";

export interface LoopbackOptions {
  readonly handlers: HostHandlers;
  /** Folder of the built screens. */
  readonly rendererFolder: string;
  /** Called with exceptions, which are our own mistakes. */
  readonly report: (error: unknown) => void;
}

export interface LoopbackServer {
  readonly port: number;
  /** The address to open; the secret stands in its fragment, which browsers send to nobody. */
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves the application to this computer alone: a random port of the loopback address, a secret made anew at every
 * launch, `Host` and `Origin` checked to the letter against other sites and renamed addresses.
 */
export async function startLoopbackServer(options: LoopbackOptions): Promise<LoopbackServer> {
  const secret = randomBytes(32).toString("base64url");
  const server = createServer();
  const port = await listen(server);
  const host = `${loopbackAddress}:${port}`;
  const gate: Gate = { host, origin: `http://${host}`, secretHash: hashOf(secret) };
  // What the parser reads by itself stays in its buffer until something overwrites it; read here, it is overwritten.
  server.on("connection", (socket) => socket.on("data", (piece) => piece.fill(0)));
  server.on("request", (request, response) => {
    answer(request, response, gate, options).catch((error: unknown) => {
      options.report(error);
      response.destroy();
    });
  });
  return {
    port,
    url: `http://${host}/#${secret}`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error === undefined ? resolve() : reject(error)));
        server.closeAllConnections();
      }),
  };
}

interface Gate {
  readonly host: string;
  readonly origin: string;
  readonly secretHash: Buffer;
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
  gate: Gate,
  options: LoopbackOptions,
): Promise<void> {
  if (request.headers.host !== gate.host) return refuse(response, 421, "This is not the address of the program.");
  const path = (request.url ?? "/").split("?", 1)[0] ?? "/";
  if (path.startsWith("/api/")) return answerRequest(request, response, path.slice("/api/".length), gate, options);
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

async function answerRequest(
  request: IncomingMessage,
  response: ServerResponse,
  name: string,
  gate: Gate,
  options: LoopbackOptions,
): Promise<void> {
  if (request.method !== "POST") return refuse(response, 405, "Requests are posted.");
  if (request.headers.origin !== gate.origin) return refuse(response, 403, "The request comes from another page.");
  if (!knowsSecret(request, gate)) return refuse(response, 403, "The secret of this launch is missing or wrong.");
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
    payload = decodeMessage(body);
  } catch {
    return refuse(response, 400, "The request is not understood.");
  } finally {
    body.fill(0);
  }
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

/** Compared as hashes: equal lengths and equal time whatever was sent. */
function knowsSecret(request: IncomingMessage, gate: Gate): boolean {
  const sent = request.headers[secretHeader];
  return typeof sent === "string" && timingSafeEqual(hashOf(sent), gate.secretHash);
}

function hashOf(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}

/**
 * The body alone holds what was sent; the pieces it came in are overwritten, because it may hold a passphrase.
 * @returns undefined when it is larger than any request can be
 */
async function readBody(request: IncomingMessage): Promise<Uint8Array | undefined> {
  if (Number(request.headers["content-length"] ?? 0) > bodyByteLimit) return throwAway(request);
  const pieces: Buffer[] = [];
  let length = 0;
  const incoming: AsyncIterable<Buffer> = request.iterator({ destroyOnReturn: false });
  try {
    for await (const piece of incoming) {
      length += piece.byteLength;
      if (length > bodyByteLimit) return throwAway(request);
      pieces.push(piece);
    }
    return joined(pieces, length);
  } finally {
    for (const piece of pieces) piece.fill(0);
  }
}

function joined(pieces: readonly Uint8Array[], length: number): Uint8Array {
  const body = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    body.set(piece, at);
    at += piece.byteLength;
  }
  return body;
}

/**
 * Takes the rest of a body and keeps nothing of it: a page that is cut off while it sends never reads the answer, and
 * takes the program for gone. A sender that falls silent, or never ends, is answered all the same.
 */
function throwAway(request: IncomingMessage): Promise<undefined> {
  return new Promise((resolve) => {
    let length = 0;
    const end = (): void => {
      clearTimeout(silence);
      resolve(undefined);
    };
    const silence = setTimeout(end, longestSilenceMilliseconds);
    request.on("data", (piece: Buffer) => {
      length += piece.byteLength;
      silence.refresh();
      if (length > mostThrownAway) end();
    });
    request.once("end", end).once("close", end);
    request.resume();
  });
}

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

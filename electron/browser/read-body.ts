import type { IncomingMessage } from "node:http";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";

/** The rest is room for what stands beside a recording. */
const bodyByteLimit = recordingByteLimit + 65_536;

/** A body beyond this is cut off all the same. */
const mostThrownAway = 4 * 1024 * 1024 * 1024;

const longestSilenceMilliseconds = 500;

/**
 * The body alone holds what was sent; the pieces it came in are overwritten, because it may hold a passphrase.
 * @returns undefined when it is larger than any request can be
 */
export async function readBody(request: IncomingMessage): Promise<Uint8Array | undefined> {
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

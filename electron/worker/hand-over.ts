import type { HostRequestName } from "../boundary/host-api.ts";
import { passphrasesOf } from "../boundary/masked-passphrases.ts";
import { sharedCopy } from "../threads/shared-copy.ts";

/** A request on its way to the working thread, with what goes over to it instead of being copied. */
export interface HandedOver {
  readonly request: unknown;
  readonly transfer: readonly ArrayBuffer[];
}

/**
 * Prepares a request for the other thread. Recordings are put where both threads see them; all other bytes, passphrases
 * among them, go over: whoever asked does not hold them afterwards.
 */
export function handOver(name: HostRequestName, request: unknown): HandedOver {
  const transfer: ArrayBuffer[] = [];
  const given = Object.entries(request as Readonly<Record<string, unknown>>).map(([member, value]) => {
    if (!(value instanceof Uint8Array)) return [member, value];
    if (name === "recordings.add") return [member, sharedCopy(value)];
    const own = inOwnBuffer(value);
    transfer.push(own.buffer);
    return [member, own];
  });
  return { request: Object.fromEntries(given), transfer };
}

/** Overwrites the passphrases of a request. */
export function forgetPassphrases(request: unknown): void {
  for (const [, passphrase] of passphrasesOf(request)) passphrase.fill(0);
}

/** A part of a larger buffer cannot go over; it is copied out, and overwritten where it lay. */
function inOwnBuffer(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const { buffer } = bytes;
  if (buffer instanceof ArrayBuffer && buffer.byteLength === bytes.byteLength) return new Uint8Array(buffer);
  const own = new Uint8Array(new ArrayBuffer(bytes.byteLength));
  own.set(bytes);
  bytes.fill(0);
  return own;
}

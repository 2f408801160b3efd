import { byteOrderOf } from "./words.ts";

/** Every C3D file carries this in its second byte. No setting: the format says so. */
const c3dMark = 0x50;

/** Bytes of a block, the unit in which a C3D file counts places. No setting: the format says so. */
export const blockBytes = 512;

/**
 * The block nearly every file keeps its parameters in. As a first byte it is a control character no text begins with.
 * No setting: the format says so.
 */
const usualParameterBlock = 2;

/** No setting: a size in bytes of the format. */
const headerBytesLookedAt = 24;

/** Letters of a name; the format itself allows 127. No setting: it tells the format from other bytes. */
const longestName = 64;

/**
 * True for the bytes of a C3D file, whole or damaged: the mark, a header that no text has (small numbers as two bytes,
 * so zero bytes), and a parameter section where the first byte says. A file with the usual first byte counts even when
 * its parameter section is cut off or damaged, so that it is refused as what it is.
 */
export function isC3d(bytes: Uint8Array): boolean {
  const parameterBlock = bytes[0] ?? 0;
  if (bytes[1] !== c3dMark || parameterBlock < usualParameterBlock) return false;
  if (!bytes.subarray(0, headerBytesLookedAt).includes(0)) return false;
  return parameterBlock === usualParameterBlock || hasParameterSection(bytes, (parameterBlock - 1) * blockBytes);
}

function hasParameterSection(bytes: Uint8Array, start: number): boolean {
  if (start + 8 > bytes.length || byteOrderOf(bytes[start + 3]!) === undefined) return false;
  const nameLength = Math.abs((bytes[start + 4]! << 24) >> 24);
  const name = bytes.subarray(start + 6, start + 6 + nameLength);
  return (
    nameLength > 0 &&
    nameLength <= longestName &&
    name.length === nameLength &&
    bytes[start + 5] !== 0 &&
    name.every(isNameByte)
  );
}

/** Letters, digits, underscore and the other printable characters of ASCII without the space. */
function isNameByte(byte: number): boolean {
  return byte > 32 && byte < 127;
}

/** How a C3D file writes numbers: by the processor it was written on. */
export type ByteOrder = "Intel" | "DEC" | "SGI";

/** Reads the numbers of one file in its own byte order. Places are bytes from 0; callers keep inside `length`. */
export interface Words {
  readonly bytes: Uint8Array;
  readonly length: number;
  readonly byteOrder: ByteOrder;
  readonly signed8: (at: number) => number;
  readonly unsigned16: (at: number) => number;
  readonly signed16: (at: number) => number;
  readonly float32: (at: number) => number;
}

const processors: ReadonlyMap<number, ByteOrder> = new Map([
  [84, "Intel"],
  [85, "DEC"],
  [86, "SGI"],
]);

/** The byte order that a processor number of the parameter section stands for. */
export function byteOrderOf(processor: number): ByteOrder | undefined {
  return processors.get(processor);
}

/** 2^(exponent − 128) for every exponent of a VAX F_floating number. */
const vaxPowers = Float64Array.from({ length: 256 }, (_, exponent) => 2 ** (exponent - 128));

/** A reader of numbers over the bytes of a file. */
export function wordsOf(bytes: Uint8Array, byteOrder: ByteOrder): Words {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const isLittle = byteOrder !== "SGI";
  return {
    bytes,
    length: bytes.length,
    byteOrder,
    signed8: (at) => view.getInt8(at),
    unsigned16: (at) => view.getUint16(at, isLittle),
    signed16: (at) => view.getInt16(at, isLittle),
    float32: byteOrder === "DEC" ? (at) => vaxFloat(bytes, at) : (at) => view.getFloat32(at, isLittle),
  };
}

/** VAX F_floating (VAX MACRO and Instruction Set Reference Manual): two little-endian words, the high one first. */
function vaxFloat(bytes: Uint8Array, at: number): number {
  const high = bytes[at + 1]!;
  const low = bytes[at]!;
  const exponent = ((high & 127) << 1) | (low >> 7);
  if (exponent === 0) return 0;
  const fraction = ((low & 127) << 16) | (bytes[at + 3]! << 8) | bytes[at + 2]!;
  const magnitude = (0.5 + fraction / 2 ** 24) * vaxPowers[exponent]!;
  return high > 127 ? -magnitude : magnitude;
}

/** 10^0 to 10^22: every one is exact in a double, so one division by it is correctly rounded. */
const powersOfTen = Float64Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

const largestExactDigits = 15;
const largestExactPower = 22;

const zero = 48;
const nine = 57;
const plus = 43;
const minus = 45;
const upperE = 69;
const lowerE = 101;

/** A number read from bytes; `end` is the index behind it, or -1 where no number stands. */
export interface NumberReader {
  value: number;
  end: number;
}

/**
 * Reads the number that starts at `start` (no blanks before it) and never reads at or beyond `limit`.
 * A whole mantissa of at most 15 digits and a power of ten of at most 22 are both exact, so their quotient or product
 * is rounded once and equals `Number()` (Clinger 1990, "How to read floating point numbers accurately", fast path);
 * everything else goes through `Number()` itself. The result is written into `reader`, which saves an object a cell.
 */
export function readNumber(
  bytes: Uint8Array,
  start: number,
  limit: number,
  decimalByte: number,
  reader: NumberReader,
): void {
  let index = start;
  let isNegative = false;
  let byte = bytes[index]!;
  if (byte === minus || byte === plus) {
    isNegative = byte === minus;
    index++;
  }
  let mantissa = 0;
  let significantDigits = 0;
  let decimals = 0;
  const firstDigit = index;
  for (; index < limit; index++) {
    byte = bytes[index]!;
    if (byte < zero || byte > nine) break;
    mantissa = mantissa * 10 + (byte - zero);
    if (mantissa !== 0) significantDigits++;
  }
  let digits = index - firstDigit;
  if (index < limit && bytes[index] === decimalByte) {
    const firstDecimal = ++index;
    for (; index < limit; index++) {
      byte = bytes[index]!;
      if (byte < zero || byte > nine) break;
      mantissa = mantissa * 10 + (byte - zero);
      if (mantissa !== 0) significantDigits++;
    }
    decimals = index - firstDecimal;
    digits += decimals;
  }
  reader.end = -1;
  if (digits === 0) return;
  let exponent = 0;
  if (index < limit && (bytes[index] === lowerE || bytes[index] === upperE)) {
    const afterExponent = exponentEnd(bytes, index + 1, limit);
    if (afterExponent < 0) return;
    exponent = exponentValue(bytes, index + 1, afterExponent);
    index = afterExponent;
  }
  const power = exponent - decimals;
  let value: number;
  if (significantDigits <= largestExactDigits && power <= largestExactPower && power >= -largestExactPower) {
    value = power < 0 ? mantissa / powersOfTen[-power]! : mantissa * powersOfTen[power]!;
    if (isNegative) value = -value;
  } else {
    value = slowNumber(bytes, start, index, decimalByte);
    if (!Number.isFinite(value)) return;
  }
  reader.value = value;
  reader.end = index;
}

function exponentEnd(bytes: Uint8Array, start: number, limit: number): number {
  let index = start;
  if (index < limit && (bytes[index] === plus || bytes[index] === minus)) index++;
  const firstDigit = index;
  while (index < limit && bytes[index]! >= zero && bytes[index]! <= nine) index++;
  return index > firstDigit ? index : -1;
}

function exponentValue(bytes: Uint8Array, start: number, end: number): number {
  let value = 0;
  for (let index = start; index < end; index++) {
    const byte = bytes[index]!;
    if (byte >= zero) value = value * 10 + (byte - zero);
  }
  return bytes[start] === minus ? -value : value;
}

function slowNumber(bytes: Uint8Array, start: number, end: number, decimalByte: number): number {
  let text = "";
  for (let index = start; index < end; index++) {
    text += bytes[index] === decimalByte ? "." : String.fromCharCode(bytes[index]!);
  }
  return Number(text);
}

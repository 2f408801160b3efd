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

/**
 * Reads the number that starts at `start` (no blanks before it) into `target[row]` and gives the index behind it, or -1
 * where no number stands. Never reads at or beyond `limit`.
 *
 * A whole mantissa of at most 15 digits and a power of ten of at most 22 are both exact, so their quotient or product
 * is rounded once and equals `Number()` (Clinger 1990, "How to read floating point numbers accurately", fast path);
 * everything else goes through `Number()` itself.
 */
export function readNumber(
  bytes: Uint8Array,
  start: number,
  limit: number,
  decimalByte: number,
  target: Float64Array,
  row: number,
): number {
  let index = start;
  let byte = index < limit ? bytes[index]! : 0;
  const isNegative = byte === minus;
  if (isNegative || byte === plus) byte = ++index < limit ? bytes[index]! : 0;
  let mantissa = 0;
  const firstDigit = index;
  while (byte >= zero && byte <= nine) {
    mantissa = mantissa * 10 + (byte - zero);
    byte = ++index < limit ? bytes[index]! : 0;
  }
  let digits = index - firstDigit;
  let decimals = 0;
  if (byte === decimalByte) {
    const firstDecimal = index + 1;
    byte = ++index < limit ? bytes[index]! : 0;
    while (byte >= zero && byte <= nine) {
      mantissa = mantissa * 10 + (byte - zero);
      byte = ++index < limit ? bytes[index]! : 0;
    }
    decimals = index - firstDecimal;
    digits += decimals;
  }
  if (digits === 0) return -1;
  let power = -decimals;
  if (byte === lowerE || byte === upperE) {
    const afterExponent = exponentEnd(bytes, index + 1, limit);
    if (afterExponent < 0) return -1;
    power += exponentValue(bytes, index + 1, afterExponent);
    index = afterExponent;
  }
  if (power <= largestExactPower && power >= -largestExactPower) {
    if (digits <= largestExactDigits || significantDigits(bytes, firstDigit, index) <= largestExactDigits) {
      const value = power < 0 ? mantissa / powersOfTen[-power]! : mantissa * powersOfTen[power]!;
      target[row] = isNegative ? -value : value;
      return index;
    }
  }
  const value = slowNumber(bytes, start, index, decimalByte);
  if (!Number.isFinite(value)) return -1;
  target[row] = value;
  return index;
}

/** Digits of the mantissa from its first one that is not 0. */
function significantDigits(bytes: Uint8Array, start: number, end: number): number {
  let count = 0;
  for (let index = start; index < end && bytes[index] !== lowerE && bytes[index] !== upperE; index++) {
    const byte = bytes[index]!;
    if (byte >= zero && byte <= nine && (count > 0 || byte !== zero)) count++;
  }
  return count;
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

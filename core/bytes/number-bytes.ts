/** 10^0 to 10^22: every one is exact in a double, so one division by it is correctly rounded. */
const powersOfTen = Float64Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

/** No setting: doubles are exact so far. */
const largestExactDigits = 15;
const largestExactPower = 22;

/** No setting: codes of characters. */
const zero = 48;
const nine = 57;
const plus = 43;
const minus = 45;
const upperE = 69;
const lowerE = 101;

/** So many digits fit a whole number of 32 bits, whatever they are. No setting: the size of a whole number. */
const digitsOfInteger = 9;

/**
 * Reads the number that starts at `start` (no blanks before it) into `target[row]` and gives the index behind it, or -1
 * where no number stands. A byte that belongs to no number must follow somewhere: the reader looks for no other end.
 *
 * A whole mantissa of at most 15 digits and a power of ten of at most 22 are both exact, so their quotient or product
 * is rounded once and equals `Number()` (Clinger 1990, "How to read floating point numbers accurately", fast path);
 * everything else goes through `Number()` itself.
 */
export function readNumber(
  bytes: Uint8Array,
  start: number,
  decimalByte: number,
  target: Float64Array,
  row: number,
): number {
  let index = start;
  let byte = bytes[index]!;
  const isNegative = byte === minus;
  if (isNegative || byte === plus) byte = bytes[++index]!;
  // Digits beyond the ninth overflow here; such numbers are read again below.
  let mantissa = 0;
  const firstDigit = index;
  while (byte >= zero && byte <= nine) {
    mantissa = (Math.imul(mantissa, 10) + byte - zero) | 0;
    byte = bytes[++index]!;
  }
  let digits = index - firstDigit;
  let decimals = 0;
  if (byte === decimalByte) {
    const firstDecimal = index + 1;
    byte = bytes[++index]!;
    while (byte >= zero && byte <= nine) {
      mantissa = (Math.imul(mantissa, 10) + byte - zero) | 0;
      byte = bytes[++index]!;
    }
    decimals = index - firstDecimal;
    digits += decimals;
  }
  if (digits === 0) return -1;
  if (digits <= digitsOfInteger && byte !== lowerE && byte !== upperE) {
    const value = mantissa / powersOfTen[decimals]!;
    target[row] = isNegative ? -value : value;
    return index;
  }
  return readLongNumber(bytes, start, index, decimals, decimalByte, target, row);
}

/** The same for a number of more digits, or with an exponent; its mantissa ends at `mantissaEnd`. */
function readLongNumber(
  bytes: Uint8Array,
  start: number,
  mantissaEnd: number,
  decimals: number,
  decimalByte: number,
  target: Float64Array,
  row: number,
): number {
  let end = mantissaEnd;
  let power = -decimals;
  if (bytes[end] === lowerE || bytes[end] === upperE) {
    end = exponentEnd(bytes, mantissaEnd + 1);
    if (end < 0) return -1;
    power += exponentValue(bytes, mantissaEnd + 1, end);
  }
  let mantissa = 0;
  let significantDigits = 0;
  for (let index = start; index < mantissaEnd; index++) {
    const byte = bytes[index]!;
    if (byte < zero || byte > nine) continue;
    mantissa = mantissa * 10 + (byte - zero);
    if (mantissa !== 0) significantDigits++;
  }
  if (significantDigits <= largestExactDigits && power <= largestExactPower && power >= -largestExactPower) {
    const value = power < 0 ? mantissa / powersOfTen[-power]! : mantissa * powersOfTen[power]!;
    target[row] = bytes[start] === minus ? -value : value;
    return end;
  }
  const value = slowNumber(bytes, start, end, decimalByte);
  if (!Number.isFinite(value)) return -1;
  target[row] = value;
  return end;
}

function exponentEnd(bytes: Uint8Array, start: number): number {
  let index = start;
  if (bytes[index] === plus || bytes[index] === minus) index++;
  const firstDigit = index;
  while (bytes[index]! >= zero && bytes[index]! <= nine) index++;
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

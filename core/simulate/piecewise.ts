/** One stretch of a piecewise polynomial: coefficients in rising powers of the time since the stretch began. */
export interface Piece {
  readonly seconds: number;
  readonly coefficients: readonly number[];
}

/** A piecewise polynomial on [0, seconds]; `starts[k]` is where piece k begins. */
export interface PiecewisePolynomial {
  readonly pieces: readonly Piece[];
  readonly starts: readonly number[];
  readonly seconds: number;
}

/** Joins pieces in order; pieces of no length are left out. */
export function joinPieces(pieces: readonly Piece[]): PiecewisePolynomial {
  const kept = pieces.filter((piece) => piece.seconds > 0);
  const starts: number[] = [];
  let time = 0;
  for (const piece of kept) {
    starts.push(time);
    time += piece.seconds;
  }
  return { pieces: kept, starts, seconds: time };
}

/** The cubic from `from` to `to` with the given slopes (per second) at its ends; slopes of zero make an ease. */
export function hermitePiece(seconds: number, from: number, to: number, slopeFrom = 0, slopeTo = 0): Piece {
  const change = (to - from) / seconds;
  return {
    seconds,
    coefficients: [
      from,
      slopeFrom,
      (3 * change - 2 * slopeFrom - slopeTo) / seconds,
      (slopeFrom + slopeTo - 2 * change) / (seconds * seconds),
    ],
  };
}

/** Value at a time; before the beginning and after the end the nearest end's value. */
export function evaluatePiecewise(curve: PiecewisePolynomial, time: number): number {
  let index = curve.pieces.length - 1;
  while (index > 0 && time < (curve.starts[index] ?? 0)) index--;
  const piece = curve.pieces[index];
  if (piece === undefined) return 0;
  const local = Math.min(Math.max(time - (curve.starts[index] ?? 0), 0), piece.seconds);
  return evaluatePolynomial(piece.coefficients, local);
}

/** The integral from the beginning, as a curve with the given value at the beginning. Exact. */
export function integratePiecewise(curve: PiecewisePolynomial, initial: number): PiecewisePolynomial {
  let value = initial;
  const pieces = curve.pieces.map((piece) => {
    const coefficients = [value, ...piece.coefficients.map((coefficient, power) => coefficient / (power + 1))];
    value = evaluatePolynomial(coefficients, piece.seconds);
    return { seconds: piece.seconds, coefficients };
  });
  return { ...curve, pieces };
}

/** Scale times the curve, plus a constant. */
export function scalePiecewise(curve: PiecewisePolynomial, scale: number, added: number): PiecewisePolynomial {
  const pieces = curve.pieces.map((piece) => ({
    seconds: piece.seconds,
    coefficients: piece.coefficients.map((coefficient, power) => scale * coefficient + (power === 0 ? added : 0)),
  }));
  return { ...curve, pieces };
}

function evaluatePolynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let power = coefficients.length - 1; power >= 0; power--) value = value * x + (coefficients[power] ?? 0);
  return value;
}

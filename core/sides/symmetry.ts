/** Limb symmetry index in per cent: 100 × involved / uninvolved (CHECKS D2), or left / right where nobody is injured. */
export function symmetryIndex(first: number, second: number): number {
  return (100 * first) / second;
}

/**
 * Signed asymmetry in per cent: 100·(L − R)/max(L, R), positive when the left is larger (Jordan, Aagaard and Herzog
 * 2015). Impellizzeri et al. 2007 sign it the other way.
 */
export function signedAsymmetry(left: number, right: number): number {
  return (100 * (left - right)) / Math.max(left, right);
}

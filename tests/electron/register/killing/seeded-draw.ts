/** Whole numbers from 0 up to, but not including, a bound; all of them follow from the seed. */
export function seededDraw(seed: number): (below: number) => number {
  let state = (seed * 2_654_435_761 + 1) >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

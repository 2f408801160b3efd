/** Abscissae and weights of the 12-point Gauss–Legendre rule on [−1, 1], computed by Newton's method. */
const rule = gaussLegendre(12);

/** Stretches are cut this short, so that 12 points integrate a 6 Hz sinusoid to rounding. */
const longestStretchSeconds = 0.05;

/** Integral of a function that is smooth between the given breaks; accurate to rounding for the curves used here. */
export function integrate(
  value: (time: number) => number,
  from: number,
  to: number,
  breaks: readonly number[] = [],
): number {
  const cuts = [from, ...breaks.filter((each) => each > from && each < to).sort((a, b) => a - b), to];
  let total = 0;
  for (let index = 1; index < cuts.length; index++) {
    const low = cuts[index - 1] ?? from;
    const high = cuts[index] ?? to;
    const stretches = Math.max(1, Math.ceil((high - low) / longestStretchSeconds));
    const half = (high - low) / stretches / 2;
    for (let stretch = 0; stretch < stretches; stretch++) {
      const middle = low + half * (2 * stretch + 1);
      for (const [abscissa, weight] of rule) total += weight * half * value(middle + half * abscissa);
    }
  }
  return total;
}

/** Largest value between two times and where: a grid of at most 0.5 ms, then golden sections about the best point. */
export function findMaximum(
  value: (time: number) => number,
  from: number,
  to: number,
): { readonly time: number; readonly value: number } {
  const steps = Math.max(8, Math.ceil((to - from) / 0.0005));
  const step = (to - from) / steps;
  let bestTime = from;
  let best = value(from);
  for (let index = 1; index <= steps; index++) {
    const time = from + index * step;
    const at = value(time);
    if (at > best) {
      best = at;
      bestTime = time;
    }
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = Math.max(from, bestTime - step);
  let high = Math.min(to, bestTime + step);
  for (let index = 0; index < 60; index++) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (value(left) > value(right)) high = right;
    else low = left;
  }
  const middle = (low + high) / 2;
  const at = value(middle);
  return at > best ? { time: middle, value: at } : { time: bestTime, value: best };
}

function gaussLegendre(points: number): readonly (readonly [number, number])[] {
  return Array.from({ length: points }, (_, index) => {
    let x = Math.cos((Math.PI * (index + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      let previous = 1;
      let current = x;
      for (let degree = 2; degree <= points; degree++) {
        [previous, current] = [current, ((2 * degree - 1) * x * current - (degree - 1) * previous) / degree];
      }
      slope = (points * (x * current - previous)) / (x * x - 1);
      x -= current / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

/** What a simulated movement must offer to be integrated by a second way. */
export interface MovingBody {
  readonly truth: { readonly massKg: number; readonly gravity: number };
  readonly forceAt: (time: number) => number;
  readonly velocityAt: (time: number) => number;
  readonly positionAt: (time: number) => number;
}

/** Trapezoids at 200 kHz over the continuous force: an integration that shares nothing with the closed forms. */
export function integrateFinely(
  jump: MovingBody,
  from: number,
  stops: readonly number[],
): { velocity: number; position: number }[] {
  const { massKg, gravity } = jump.truth;
  let time = from;
  let velocity = jump.velocityAt(from);
  let position = jump.positionAt(from);
  let acceleration = jump.forceAt(from) / massKg - gravity;
  return stops.map((stop) => {
    const steps = Math.ceil((stop - time) * 200_000);
    const step = (stop - time) / steps;
    for (let index = 0; index < steps; index++) {
      const next = jump.forceAt(time + step * (index + 1)) / massKg - gravity;
      position += velocity * step + (step * step * (2 * acceleration + next)) / 6;
      velocity += (step * (acceleration + next)) / 2;
      acceleration = next;
    }
    time = stop;
    return { velocity, position };
  });
}

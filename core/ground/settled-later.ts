/** What is there already, or will be. */
export type SettledLater<Value> = Value | Promise<Value>;

/**
 * A path of steps whose text stands once, whether what it waits for is there at once or later: `yield* settled(asked)`
 * waits for one thing, and `walkNow` or `walkLater` walks the whole.
 */
export type Walk<Outcome> = Generator<unknown, Outcome, unknown>;

/** Waits within a walk for what was asked. */
export function* settled<Value>(asked: SettledLater<Value>): Walk<Value> {
  // Both walkers hand back exactly what was asked for, settled.
  return (yield asked) as Value;
}

/** Walks to the end at once. Whoever calls it hands the walk only things that are there already. */
export function walkNow<Outcome>(walk: Walk<Outcome>): Outcome {
  let step = walk.next();
  while (step.done !== true) step = walk.next(step.value);
  return step.value;
}

/** Walks to the end, waiting for each thing in turn. */
export async function walkLater<Outcome>(walk: Walk<Outcome>): Promise<Outcome> {
  let step = walk.next();
  while (step.done !== true) step = walk.next(await step.value);
  return step.value;
}

/**
 * So many outcomes are kept for one signal: more than there are inputs whose uncertainty is propagated. No setting: it
 * spares time and changes no result.
 */
const mostKept = 16;

interface Outcome<Value> {
  readonly inputs: readonly number[];
  readonly value: Value;
}

/**
 * Outcomes of a computation that follow from some samples, which nobody changes, and a few numbers alone. While one input
 * after the other is moved to propagate its uncertainty, what it does not touch need not be computed again: the very same
 * numbers give the very same outcome.
 */
export class Remembered<Value> {
  readonly #outcomes = new WeakMap<object, Outcome<Value>[]>();

  /** The outcome for the samples of `source` and the other inputs: kept from before, else made now. */
  of(source: object, inputs: readonly number[], make: () => Value): Value {
    let outcomes = this.#outcomes.get(source);
    if (outcomes === undefined) {
      outcomes = [];
      this.#outcomes.set(source, outcomes);
    }
    for (const outcome of outcomes) if (areSame(outcome.inputs, inputs)) return outcome.value;
    const value = make();
    if (outcomes.length === mostKept) outcomes.shift();
    outcomes.push({ inputs, value });
    return value;
  }
}

function areSame(one: readonly number[], other: readonly number[]): boolean {
  for (let index = 0; index < one.length; index += 1) if (!Object.is(one[index], other[index])) return false;
  return true;
}

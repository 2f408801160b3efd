/** What became of named parts since they were told last: which there are, and those that are new. */
export interface PartsChange<Part> {
  readonly keys: readonly string[];
  readonly fresh: readonly (readonly [key: string, part: Part])[];
}

/** Tells another thread of parts that are never altered: each goes over once. */
export class ToldParts<Part extends object> {
  #told: ReadonlyMap<string, Part> = new Map();

  /** @returns undefined where everything was told already */
  change(now: Iterable<readonly [key: string, part: Part]>): PartsChange<Part> | undefined {
    const parts = new Map(now);
    const keys = [...parts.keys()];
    const fresh = [...parts].filter(([key, part]) => this.#told.get(key) !== part);
    const isSame = fresh.length === 0 && keys.join("\n") === [...this.#told.keys()].join("\n");
    this.#told = parts;
    return isSame ? undefined : { keys, fresh };
  }
}

/** The parts after a change. */
export function heardParts<Part>(
  before: ReadonlyMap<string, Part>,
  change: PartsChange<Part> | undefined,
): ReadonlyMap<string, Part> {
  if (change === undefined) return before;
  const known = new Map([...before, ...change.fresh]);
  return new Map(
    change.keys.flatMap((key) => {
      const part = known.get(key);
      return part === undefined ? [] : [[key, part] as const];
    }),
  );
}

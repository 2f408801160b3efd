/** Rows of a table that are chosen together: the one that keys move, and where a range began. */
export interface RowSelection {
  readonly active: string;
  readonly anchor: string;
  readonly chosen: ReadonlySet<string>;
}

/** One row, chosen alone. */
export function onlyRow(key: string): RowSelection {
  return { active: key, anchor: key, chosen: new Set([key]) };
}

/** Everything between where the range began and a row, both included. */
export function rangeTo(selection: RowSelection, key: string, keys: readonly string[]): RowSelection {
  const [from, to] = [keys.indexOf(selection.anchor), keys.indexOf(key)].sort((one, other) => one - other);
  if (from === undefined || to === undefined || from < 0) return onlyRow(key);
  return { active: key, anchor: selection.anchor, chosen: new Set(keys.slice(from, to + 1)) };
}

/** Adds a row to those chosen, or takes it out; the last one stays. */
export function withToggled({ chosen }: RowSelection, key: string): RowSelection {
  const next = new Set(chosen);
  if (!next.delete(key)) next.add(key);
  return { active: key, anchor: key, chosen: next.size === 0 ? new Set([key]) : next };
}

/** Every row. */
export function allRows(selection: RowSelection, keys: readonly string[]): RowSelection {
  return { ...selection, chosen: new Set(keys) };
}

/** What of a selection is left when rows have gone; the given row where nothing is. */
export function keptSelection(
  selection: RowSelection | undefined,
  keys: readonly string[],
  otherwise: string,
): RowSelection {
  if (selection === undefined || !keys.includes(selection.active)) return onlyRow(otherwise);
  return { ...selection, chosen: new Set(keys.filter((key) => selection.chosen.has(key))) };
}

/** A key pressed in the table. */
export interface PressedKey {
  readonly key: string;
  readonly shiftKey: boolean;
  /** Control, or Command. */
  readonly control: boolean;
}

/** What a key does to the selection; undefined where it does nothing to it. */
export function afterKey(
  selection: RowSelection,
  { key, shiftKey, control }: PressedKey,
  keys: readonly string[],
): RowSelection | undefined {
  if (key === " ") return withToggled(selection, selection.active);
  if (control && key.toLowerCase() === "a") return allRows(selection, keys);
  const at = keys.indexOf(selection.active);
  const goals: Readonly<Record<string, number>> = { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: keys.length - 1 };
  const goal = goals[key];
  const next = goal === undefined ? undefined : keys[Math.min(keys.length - 1, Math.max(0, goal))];
  if (next === undefined) return undefined;
  if (shiftKey) return rangeTo(selection, next, keys);
  return control ? { ...selection, active: next } : onlyRow(next);
}

import { type Finding, finding } from "../finding.ts";
import type { ColumnKey } from "../session.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { LayoutAnswers } from "./request.ts";
import { isSteadilyRising } from "./stamps.ts";

type Role = "time" | "left" | "right" | "total";

/** Which column (index from 0) plays which part. */
export interface ColumnRoles {
  readonly time?: number;
  readonly left?: number;
  readonly right?: number;
  readonly total?: number;
  /** Why, in words, by column index. */
  readonly reasons: ReadonlyMap<number, string>;
  /** Refusals; with one the force columns are not to be used. */
  readonly findings: readonly Finding[];
}

const optionExample = "--columns time=1,left=2,right=3";

/**
 * Gives the columns their parts: what a person stated first, then names and units, then behaviour (an unnamed first
 * column that rises steadily is time). When two readings are plausible it asks.
 * @param columns undefined for a column of text.
 */
export function assignColumns(
  hints: readonly ColumnHint[],
  columns: readonly (Float64Array | undefined)[],
  answers: LayoutAnswers,
): ColumnRoles {
  const reasons = new Map<number, string>();
  const problems: Finding[] = [];
  const stated: Partial<Record<Role, number>> = {};
  for (const role of ["time", "left", "right", "total"] as const) {
    const key = answers[role];
    if (key === undefined) continue;
    const found = findColumn(key, hints, columns);
    if (typeof found === "string") problems.push(unclear(found));
    else if (reasons.has(found)) problems.push(unclear(`Column ${found + 1} was stated twice.`));
    else {
      stated[role] = found;
      reasons.set(found, `stated as ${role === "total" ? "total force" : role}`);
    }
  }
  const time = stated.time ?? recogniseTime(hints, columns, reasons);
  const hasStatedForce = stated.left !== undefined || stated.right !== undefined || stated.total !== undefined;
  const timePart = time === undefined ? {} : { time };
  if (problems.length > 0) return { ...timePart, reasons, findings: problems };
  if (hasStatedForce) return { ...stated, ...timePart, reasons, findings: [] };
  // Another column that calls itself time but does not rise may be anything: it is not passed over as a second clock.
  const forceHints = hints.map((hint, index): ColumnHint => {
    const column = columns[index];
    const isClock = index === time || (column !== undefined && isSteadilyRising(column));
    return (hint.kind === "time" || hint.kind === "index") && !isClock ? { ...hint, kind: "unknown" } : hint;
  });
  return { ...timePart, ...recogniseForces(forceHints, columns, reasons) };
}

/** Index of the column a key means, or a sentence that says why there is none. */
function findColumn(
  key: ColumnKey,
  hints: readonly ColumnHint[],
  columns: readonly (Float64Array | undefined)[],
): number | string {
  const wanted = String(key).trim().toLowerCase();
  const matches = (name: string): boolean => typeof key === "string" && name.toLowerCase() === wanted;
  let found = hints.flatMap((hint, index) => (matches(hint.written) ? [index] : []));
  if (found.length === 0) found = hints.flatMap((hint, index) => (matches(hint.bare) ? [index] : []));
  if (found.length > 1) return `Several columns are called "${key}" (${positions(found)}); state the position.`;
  const index = found[0] ?? (/^\d+$/.test(wanted) ? Number(wanted) - 1 : -1);
  if (index < 0 || index >= hints.length) {
    const names = hints.map((hint, position) => label(hint, position)).join(", ");
    return `There is no column "${key}"; the file has ${names}.`;
  }
  return columns[index] === undefined ? `Column ${label(hints[index]!, index)} holds text, not numbers.` : index;
}

function recogniseTime(
  hints: readonly ColumnHint[],
  columns: readonly (Float64Array | undefined)[],
  reasons: Map<number, string>,
): number | undefined {
  for (const kind of ["time", "index"] as const) {
    const found = hints.flatMap((hint, index) =>
      hint.kind === kind && isFree(index, columns, reasons) ? [index] : [],
    );
    const index = found.find((position) => isSteadilyRising(columns[position]!)) ?? found[0];
    if (index === undefined) continue;
    reasons.set(index, kind === "time" ? "its name or unit says time" : "its name says sample number");
    return index;
  }
  const numeric = columns.flatMap((column, position) => (column === undefined ? [] : [position]));
  const [first] = numeric;
  if (first === undefined || numeric.length < 2 || reasons.has(first)) return undefined;
  if (hints[first]!.kind !== "unknown" || !isSteadilyRising(columns[first]!)) return undefined;
  reasons.set(first, "it rises steadily from row to row, as time does");
  return first;
}

function isFree(
  index: number,
  columns: readonly (Float64Array | undefined)[],
  reasons: ReadonlyMap<number, string>,
): boolean {
  return columns[index] !== undefined && !reasons.has(index);
}

function recogniseForces(
  hints: readonly ColumnHint[],
  columns: readonly (Float64Array | undefined)[],
  reasons: Map<number, string>,
): Omit<ColumnRoles, "time"> {
  const ofKind = (kind: ColumnHint["kind"]): number[] => {
    const all = hints.flatMap((hint, index) => (hint.kind === kind && isFree(index, columns, reasons) ? [index] : []));
    const vertical = all.filter((index) => hints[index]!.isVertical);
    return all.length > 1 && vertical.length > 0 ? vertical : all;
  };
  const refuse = (message: string): Omit<ColumnRoles, "time"> => ({ reasons, findings: [unclear(message)] });
  const silent = hints.findIndex(
    (hint, index) => ["left", "right", "total"].includes(hint.kind) && columns[index] === undefined,
  );
  if (silent >= 0) return refuse(`Column ${label(hints[silent]!, silent)} holds no numbers.`);
  const left = ofKind("left");
  const right = ofKind("right");
  const total = ofKind("total");
  const force = ofKind("force");
  const unknown = ofKind("unknown");
  for (const [side, found] of [
    ["left plate", left],
    ["right plate", right],
    ["total force", total],
  ] as const) {
    if (found.length > 1) return refuse(`Several columns could be the ${side}: ${labels(found, hints)}.`);
  }
  const sides = { ...part("left", left), ...part("right", right) };
  for (const index of [...left, ...right]) reasons.set(index, `its name says ${hints[index]!.kind}`);

  if (left.length + right.length === 2) {
    const check = total[0] ?? (force.length === 1 ? force[0] : undefined);
    if (check !== undefined) reasons.set(check, "total force, compared with left plus right");
    return { ...sides, ...(check === undefined ? {} : { total: check }), reasons, findings: [] };
  }
  if (left.length + right.length === 1) {
    if (total.length === 1) {
      reasons.set(total[0]!, "its name says total; the other side is the total less the named side");
      return { ...sides, total: total[0]!, reasons, findings: [] };
    }
    const unexplained = [...force, ...unknown, ...ofKind("contradictory")];
    if (unexplained.length > 0) return refuse(`It is not clear what ${labels(unexplained, hints)} holds.`);
    return { ...sides, reasons, findings: [] };
  }
  const single = [total, force, unknown].find((found) => found.length > 0) ?? [];
  if (single.length === 0) return refuse("No column could be a vertical force.");
  if (single.length > 1) return refuse(`It is not clear which plate each column is: ${labels(single, hints)}.`);
  reasons.set(single[0]!, total.length > 0 ? "its name says total" : "the only column that can be force");
  return { total: single[0]!, reasons, findings: [] };
}

function part(role: "left" | "right", found: readonly number[]): Partial<Record<"left" | "right", number>> {
  return found[0] === undefined ? {} : { [role]: found[0] };
}

function label(hint: ColumnHint, index: number): string {
  return hint.written === "" ? `${index + 1}` : `${index + 1} (${hint.written})`;
}

function labels(found: readonly number[], hints: readonly ColumnHint[]): string {
  return found.map((index) => `column ${label(hints[index]!, index)}`).join(", ");
}

function positions(found: readonly number[]): string {
  return found.map((index) => index + 1).join(", ");
}

function unclear(message: string): Finding {
  return finding("columns-unclear", "refusal", message, `State which column is which (${optionExample}).`);
}

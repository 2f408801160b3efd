import { type Finding, finding, isRefused } from "../ground/finding.ts";
import type { StatementSource } from "../ground/findings/file-parts.ts";
import type { Settings } from "../settings/settings.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnRoles, Columns, RoleReason } from "./column-roles.ts";
import type { LayoutAnswers } from "./reading-statements.ts";
import { recogniseForces } from "./recognise-forces.ts";
import { isSteadilyRising, neverFalls } from "./stamps.ts";
import { findColumns, namedColumn, namedColumns, noColumn, statedTwice } from "./stated-columns.ts";

/**
 * Gives the columns their parts: what a person stated first, then names and units, then behaviour (an unnamed first
 * column that rises steadily is time). When two readings are plausible it asks.
 * @param columns undefined for a column of text.
 */
export function assignColumns(
  hints: readonly ColumnHint[],
  columns: Columns,
  answers: LayoutAnswers,
  settings: Settings,
): ColumnRoles {
  const reasons = new Map<number, RoleReason>();
  const problems: Finding[] = [];
  const stated: Record<"left" | "right" | "total", readonly number[]> = { left: [], right: [], total: [] };
  const { layout } = answers;
  const source = layout === undefined ? "stated" : `by the layout "${layout.name}"`;
  const isTimeLeftOut = isNoTime(answers, hints);
  let time: number | undefined;
  for (const role of ["time", "left", "right", "total"] as const) {
    const key = answers[role];
    if (key === undefined || (role === "time" && isTimeLeftOut)) continue;
    const found = findColumns(key, hints, columns);
    if ("kind" in found) {
      problems.push(found);
      continue;
    }
    const problem = problemOf(role, found, reasons);
    if (problem !== undefined) {
      problems.push(problem);
      continue;
    }
    if (role === "time") time = found[0];
    else stated[role] = found;
    const part = role === "total" ? "total force" : role;
    const words = `${source} as ${part}${found.length > 1 ? ", added up" : ""}`;
    for (const index of found) reasons.set(index, { words, confidence: "certain" });
  }
  const hasStatedForce = stated.left.length + stated.right.length + stated.total.length > 0;
  time ??= isTimeLeftOut ? undefined : recogniseTime(hints, columns, reasons, settings);
  const timePart = time === undefined ? {} : { time };
  const timeNotes = isTimeLeftOut && hints.some((hint) => hint.kind === "time") ? [timeLeftOut(layout, hints)] : [];
  if (problems.length > 0) return { left: [], right: [], total: [], ...timePart, reasons, findings: problems };
  if (hasStatedForce) return exchanged({ ...stated, ...timePart, reasons, findings: timeNotes }, answers, hints);
  // Another column that calls itself time but does not rise may be anything: it is not passed over as a second clock.
  const forceHints = hints.map((hint, index): ColumnHint => {
    if (index === time || (hint.kind !== "time" && hint.kind !== "index")) return hint;
    const column = columns[index];
    return column !== undefined && isSteadilyRising(column, settings) ? hint : { ...hint, kind: "unknown" };
  });
  const forces = recogniseForces(forceHints, columns, reasons, settings);
  const roles: ColumnRoles = { ...forces, ...timePart, reasons, findings: [...timeNotes, ...forces.findings] };
  return isRefused(roles.findings) ? roles : exchanged(roles, answers, hints);
}

/** True where a person says that the file's time column is not to be used. */
function isNoTime({ time }: LayoutAnswers, hints: readonly ColumnHint[]): boolean {
  if (typeof time !== "string" || time.trim().toLowerCase() !== noColumn) return false;
  return !hints.some((hint) => [hint.written, hint.bare].some((name) => name.toLowerCase() === noColumn));
}

function problemOf(
  role: string,
  found: readonly number[],
  reasons: ReadonlyMap<number, RoleReason>,
): Finding | undefined {
  if (role === "time" && found.length > 1) {
    return finding("columns-unclear/time-summed", "refusal", {}, { answers: [{ asks: "columns" }] });
  }
  const twice = found.find((index) => reasons.has(index));
  return twice === undefined ? undefined : statedTwice(twice);
}

function recogniseTime(
  hints: readonly ColumnHint[],
  columns: Columns,
  reasons: Map<number, RoleReason>,
  settings: Settings,
): number | undefined {
  for (const kind of ["time", "index"] as const) {
    const found = hints.flatMap((hint, index) =>
      hint.kind === kind && columns[index] !== undefined && !reasons.has(index) ? [index] : [],
    );
    const rising = found.find((position) => isSteadilyRising(columns[position]!, settings));
    const index = rising ?? found[0];
    if (index === undefined) continue;
    const words = kind === "time" ? "its name or unit says time" : "its name says sample number";
    const isDoubtful = rising === undefined && !neverFalls(columns[index]!);
    reasons.set(index, {
      words: isDoubtful ? `${words}, but it does not rise from row to row` : words,
      confidence: isDoubtful ? "unclear" : "certain",
    });
    return index;
  }
  const numeric = columns.flatMap((column, position) => (column === undefined ? [] : [position]));
  const [first] = numeric;
  if (first === undefined || numeric.length < 2 || reasons.has(first)) return undefined;
  if (hints[first]!.kind !== "unknown" || !isSteadilyRising(columns[first]!, settings)) return undefined;
  reasons.set(first, { words: "it rises steadily from row to row, as time does", confidence: "likely" });
  return first;
}

/** Left and right exchanged where a person says that the plates were swapped, and said. */
function exchanged(roles: ColumnRoles, { swapPlates }: LayoutAnswers, hints: readonly ColumnHint[]): ColumnRoles {
  if (swapPlates !== true) return roles;
  const { left, right } = roles;
  if (left.length + right.length === 0) {
    const warning = finding("plates-swapped/no-foot", "warning", {}, { answers: [{ asks: "columns" }] });
    return { ...roles, findings: [...roles.findings, warning] };
  }
  const reasons = new Map(roles.reasons);
  for (const index of [...left, ...right]) {
    const reason = reasons.get(index);
    if (reason !== undefined) reasons.set(index, { ...reason, words: `${reason.words}; exchanged as stated` });
  }
  const note = finding("plates-swapped/exchanged", "note", {
    left: namedColumns(right, hints),
    right: namedColumns(left, hints),
  });
  return { ...roles, left: right, right: left, reasons, findings: [...roles.findings, note] };
}

function timeLeftOut(layout: LayoutAnswers["layout"], hints: readonly ColumnHint[]): Finding {
  const index = hints.findIndex((hint) => hint.kind === "time");
  const column = namedColumn(hints[index]!, index);
  const source: StatementSource = layout === undefined ? { from: "person" } : { from: "layout", name: layout.name };
  return finding("time-left-out", "warning", { column, source }, { place: { at: "column", column } });
}

import type { Finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { ColumnHint } from "./column-hint.ts";
import { type Columns, columnsUnclear, type ForceRoles, type RoleReason } from "./column-roles.ts";
import { foldWord } from "./column-words.ts";
import { loadLevel, sumOfOthers } from "./load-level.ts";
import type { Confidence } from "./request.ts";
import { columnLabel, columnLabels } from "./stated-columns.ts";

interface RecognisedForces extends ForceRoles {
  readonly findings: readonly Finding[];
}

/**
 * Finds the force columns by name and unit; what is not clear is asked, naming the readings.
 * @param reasons columns with a reason have their part already; new ones are added.
 */
export function recogniseForces(
  hints: readonly ColumnHint[],
  columns: Columns,
  reasons: Map<number, RoleReason>,
  settings: Settings,
): RecognisedForces {
  const isFree = (index: number): boolean => columns[index] !== undefined && !reasons.has(index);
  const ofKind = (kind: ColumnHint["kind"]): number[] => {
    const all = hints.flatMap((hint, index) => (hint.kind === kind && isFree(index) ? [index] : []));
    const vertical = all.filter((index) => hints[index]!.isVertical);
    return all.length > 1 && vertical.length > 0 ? vertical : all;
  };
  const ask = (message: string, action?: string): RecognisedForces => ({
    left: [],
    right: [],
    total: [],
    findings: [columnsUnclear(message, action)],
  });
  const take = (found: readonly number[], words: string, confidence: Confidence = "certain"): void => {
    for (const index of found) {
      const isSure = confidence === "certain" && !hints[index]!.isFromPair;
      const pair = hints[index]!.isFromPair ? ", taken together with the other column's" : "";
      reasons.set(index, { words: words + pair, confidence: isSure ? "certain" : "likely" });
    }
  };
  const silent = hints.findIndex(
    (hint, index) => ["left", "right", "total"].includes(hint.kind) && columns[index] === undefined,
  );
  if (silent >= 0) return ask(`Column ${columnLabel(hints[silent]!, silent)} holds no numbers.`);
  const left = ofKind("left");
  const right = ofKind("right");
  const total = ofKind("total");
  const force = ofKind("force");
  const unknown = ofKind("unknown");
  if (total.length > 1) return ask(`Several columns could be the total force: ${columnLabels(total, hints)}.`);
  const chosen = [left, right, total, force].find((found) => found.length > 0) ?? [];
  const sideways = sidewaysDoubt(chosen, hints, columns, settings);
  if (sideways !== undefined) return ask(sideways);

  // Two short words beside more forces may as well name four corners ("FL", "FR", "RL", "RR").
  const isPaired = [...left, ...right].some((index) => hints[index]!.isFromPair);
  if (isPaired && force.length > 1) {
    return askWhichFoot([...left, ...right, ...force].sort(ascending), hints, columns, ask, settings);
  }
  if (left.length > 1 || right.length > 1) {
    if (!areFootParts(left, right, hints)) return askWhichOfSeveral(left, right, hints, ask);
    take(left, "its name says left and a part of the foot; the plates of one foot are added");
    take(right, "its name says right and a part of the foot; the plates of one foot are added");
  } else {
    take(left, "its name says left");
    take(right, "its name says right");
  }
  if (left.length > 0 && right.length > 0) {
    // A force that stands still beside two plates is a body weight or a threshold, and no sum of theirs.
    const moving = force.filter((index) => !isConstant(columns[index]!));
    const check = total[0] ?? (moving.length === 1 ? moving[0] : undefined);
    if (check === undefined) return { left, right, total: [], findings: [] };
    take([check], "total force, compared with left plus right", total.length > 0 ? "certain" : "likely");
    return { left, right, total: [check], findings: [] };
  }
  if (left.length + right.length > 0) {
    if (total.length === 1) {
      take(total, "its name says total; the other side is the total less the named side");
      return { left, right, total, findings: [] };
    }
    const unexplained = [...force, ...unknown, ...ofKind("contradictory")];
    if (unexplained.length > 0) return ask(`It is not clear what ${columnLabels(unexplained, hints)} holds.`);
    return { left, right, total: [], findings: [] };
  }
  // One column called vertical does not tell what other forces beside it are: a second plate is one reading.
  const everyForce = hints.flatMap((hint, index) => (hint.kind === "force" && isFree(index) ? [index] : []));
  const single = [total, everyForce, unknown].find((found) => found.length > 0) ?? [];
  if (single.length === 0) return ask("No column could be a vertical force.");
  if (single.length > 1) return askWhichFoot(single, hints, columns, ask, settings);
  if (total.length > 0) take(single, "its name says total");
  else take(single, "the only column that can be force", hints[single[0]!]!.kind === "force" ? "certain" : "likely");
  return { left: [], right: [], total: single, findings: [] };
}

function isConstant(values: Float64Array): boolean {
  return values.every((value) => value === values[0]);
}

function ascending(one: number, other: number): number {
  return one - other;
}

/** Two or more plates under each foot: the same named parts on both sides, in the same unit. */
function areFootParts(left: readonly number[], right: readonly number[], hints: readonly ColumnHint[]): boolean {
  const partsOf = (found: readonly number[]): string =>
    [...new Set(found.map((index) => hints[index]!.footPart))].sort().join(" ");
  const all = [...left, ...right].map((index) => hints[index]!);
  return (
    left.length === right.length &&
    partsOf(left) === partsOf(right) &&
    new Set(left.map((index) => hints[index]!.footPart)).size === left.length &&
    all.every((hint) => hint.footPart !== "" && foldWord(hint.unit) === foldWord(all[0]!.unit))
  );
}

type Ask = (message: string, action?: string) => RecognisedForces;

function askWhichOfSeveral(
  left: readonly number[],
  right: readonly number[],
  hints: readonly ColumnHint[],
  ask: Ask,
): RecognisedForces {
  const [side, found] = left.length > 1 ? (["left", left] as const) : (["right", right] as const);
  const places = found.map((index) => index + 1);
  return ask(
    `Several columns could be the ${side} plate: ${columnLabels(found, hints)}. They may be plates under one foot, which are added, or several readings, of which one counts.`,
    `State which column is which (--columns ${side}=${places.join("+")} adds them, ${side}=${places[0]} takes one; the other side likewise).`,
  );
}

function askWhichFoot(
  single: readonly number[],
  hints: readonly ColumnHint[],
  columns: Columns,
  ask: Ask,
  settings: Settings,
): RecognisedForces {
  const sum = sumOfOthers(
    single.map((index) => columns[index]!),
    settings,
  );
  const plates = sum < 0 ? single : single.filter((_, position) => position !== sum);
  const [one = 0, other = 0] = plates.map((index) => index + 1);
  const total = sum < 0 ? "" : ` Column ${columnLabel(hints[single[sum]!]!, single[sum]!)} is the sum of the others.`;
  const isPair = plates.length === 2;
  return ask(
    `It is not clear which plate each column is: ${columnLabels(single, hints)}.${total}${isPair ? " Either can be the left foot's." : ""}`,
    isPair
      ? `State which column is which (--columns left=${one},right=${other} or left=${other},right=${one}; total=${one}+${other} takes their sum where nobody knows the feet).`
      : `State which column is which (--columns left=${one},right=${other}; columns that belong together are added: left=${one}+${other}).`,
  );
}

/** A sentence where a column called horizontal carries the person, and the one called vertical does not. */
function sidewaysDoubt(
  chosen: readonly number[],
  hints: readonly ColumnHint[],
  columns: Columns,
  settings: Settings,
): string | undefined {
  const vertical = chosen.filter((index) => hints[index]!.isVertical);
  if (vertical.length === 0) return undefined;
  const unit = foldWord(hints[vertical[0]!]!.unit);
  const sideways = hints.flatMap((hint, index) =>
    hint.kind === "other" && columns[index] !== undefined && isHorizontalForce(hint) && foldWord(hint.unit) === unit
      ? [index]
      : [],
  );
  if (sideways.length === 0) return undefined;
  const level = (index: number): number => loadLevel(columns[index] ?? new Float64Array(0), settings);
  const upright = Math.max(...vertical.map(level));
  const loaded = sideways.find((index) => level(index) > settings.sidewaysLoadRatio * upright);
  if (loaded === undefined) return undefined;
  return (
    `Column ${columnLabel(hints[vertical[0]!]!, vertical[0]!)} is called vertical, but column ${columnLabel(hints[loaded]!, loaded)} carries the load: ` +
    `either the vertical axis of this file has another name, or its columns are mixed up.`
  );
}

function isHorizontalForce({ bare }: ColumnHint): boolean {
  return /(?:^|[^\p{L}])(?:v?g?r?f[ _]?[xy]|[xy])(?:$|[^\p{L}])/iu.test(bare.replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2"));
}

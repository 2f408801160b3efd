import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import { eitherTotal, feetOfOneSided, feetOfPlates, severalOfSide } from "./column-candidates.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { Columns, ForceRoles, RoleReason } from "./column-roles.ts";
import { foldWord } from "./column-words.ts";
import { loadLevel, sumOfOthers } from "./load-level.ts";
import type { Confidence } from "./request.ts";
import { namedColumn, namedColumns } from "./stated-columns.ts";

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
  if (silent >= 0) {
    const column = namedColumn(hints[silent]!, silent);
    return unclear(finding("columns-unclear/no-numbers", "refusal", { column }, asked));
  }
  const left = ofKind("left");
  const right = ofKind("right");
  const total = ofKind("total");
  const force = ofKind("force");
  const unknown = ofKind("unknown");
  if (total.length > 1) {
    const figures = { columns: namedColumns(total, hints) };
    return unclear(finding("columns-unclear/several-totals", "refusal", figures, { answers: eitherTotal(total) }));
  }
  const chosen = [left, right, total, force].find((found) => found.length > 0) ?? [];
  const sideways = sidewaysDoubt(chosen, hints, columns, settings);
  if (sideways !== undefined) return unclear(sideways);

  // Two short words beside more forces may as well name four corners ("FL", "FR", "RL", "RR").
  const isPaired = [...left, ...right].some((index) => hints[index]!.isFromPair);
  if (isPaired && force.length > 1) {
    return askWhichFoot([...left, ...right, ...force].sort(ascending), hints, columns, settings);
  }
  if (left.length > 1 || right.length > 1) {
    if (!areFootParts(left, right, hints)) return askWhichOfSeveral(left, right, hints);
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
    if (unexplained.length > 0) {
      const answers = feetOfOneSided(left, right, unexplained);
      const figures = { columns: namedColumns(unexplained, hints) };
      return unclear(finding("columns-unclear/unexplained", "refusal", figures, { answers }));
    }
    return { left, right, total: [], findings: [] };
  }
  // One column called vertical does not tell what other forces beside it are: a second plate is one reading.
  const everyForce = hints.flatMap((hint, index) => (hint.kind === "force" && isFree(index) ? [index] : []));
  const single = [total, everyForce, unknown].find((found) => found.length > 0) ?? [];
  if (single.length === 0) return unclear(finding("columns-unclear/no-force", "refusal", {}, asked));
  if (single.length > 1) return askWhichFoot(single, hints, columns, settings);
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

const asked = { answers: [{ asks: "columns" }] } as const;

function unclear(question: Finding): RecognisedForces {
  return { left: [], right: [], total: [], findings: [question] };
}

function askWhichOfSeveral(
  left: readonly number[],
  right: readonly number[],
  hints: readonly ColumnHint[],
): RecognisedForces {
  const [side, found] = left.length > 1 ? (["left", left] as const) : (["right", right] as const);
  return unclear(
    finding(
      "columns-unclear/several-of-side",
      "refusal",
      { side, columns: namedColumns(found, hints) },
      { answers: severalOfSide(left, right) },
    ),
  );
}

function askWhichFoot(
  single: readonly number[],
  hints: readonly ColumnHint[],
  columns: Columns,
  settings: Settings,
): RecognisedForces {
  const sum = sumOfOthers(
    single.map((index) => columns[index]!),
    settings,
  );
  const plates = sum < 0 ? single : single.filter((_, position) => position !== sum);
  const total = sum < 0 ? undefined : single[sum]!;
  return unclear(
    finding(
      "columns-unclear/which-plate",
      "refusal",
      {
        columns: namedColumns(single, hints),
        ...(total === undefined ? {} : { sum: namedColumn(hints[total]!, total) }),
        isPair: plates.length === 2,
      },
      { answers: feetOfPlates(plates, total) },
    ),
  );
}

/** The question where a column called horizontal carries the person, and the one called vertical does not. */
function sidewaysDoubt(
  chosen: readonly number[],
  hints: readonly ColumnHint[],
  columns: Columns,
  settings: Settings,
): Finding | undefined {
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
  return finding(
    "columns-unclear/sideways",
    "refusal",
    { vertical: namedColumn(hints[vertical[0]!]!, vertical[0]!), loaded: namedColumn(hints[loaded]!, loaded) },
    asked,
  );
}

function isHorizontalForce({ bare }: ColumnHint): boolean {
  return /(?:^|[^\p{L}])(?:v?g?r?f[ _]?[xy]|[xy])(?:$|[^\p{L}])/iu.test(bare.replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2"));
}

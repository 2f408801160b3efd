import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { ForceColumn } from "./force-columns.ts";
import type { ForceUnit } from "./force-units.ts";
import { newtonsIn } from "./force-units.ts";
import { loadLevel, rowStride } from "./load-level.ts";
import { orderStatistic } from "./order-statistic.ts";

/** What is seen of the load of a recording, in newtons as converted. */
interface StandingLoad {
  /** Middle of the loaded samples: about body weight where somebody stands and jumps. */
  readonly newtons: number;
  /** True where the plate is also empty, and loaded well beyond standing: somebody jumps. */
  readonly moves: boolean;
}

/** The load on all plates together; undefined where there is only noise. */
export function standingLoad(columns: readonly ForceColumn[], settings: Settings): StandingLoad | undefined {
  const sides = columns.filter((column) => column.limb !== "both");
  const total = columns.find((column) => column.limb === "both");
  const used = total === undefined ? sides : [total];
  const rows = used[0]?.force.length ?? 0;
  if (rows < 2) return undefined;
  const stride = rowStride(rows - 1);
  const count = Math.floor((rows - 2) / stride) + 1;
  const sum = new Float64Array(count);
  const steps = new Float64Array(count);
  // Plain loops: closures took ten times as long.
  for (const { force } of used) {
    for (let index = 0; index < count; index++) {
      sum[index] = sum[index]! + force[index * stride]!;
      steps[index] = steps[index]! + force[index * stride + 1]!;
    }
  }
  for (let index = 0; index < count; index++) steps[index] = Math.abs(steps[index]! - sum[index]!);
  const level = loadLevel(sum, settings);
  const noise = orderStatistic(steps, count >> 1);
  if (!(level > settings.unitNoiseRatio * noise)) return undefined;
  let empty = 0;
  let loadedCount = 0;
  for (let index = 0; index < count; index++) {
    const value = sum[index]!;
    if (Math.abs(value) < settings.unitEmptyFraction * level) empty += 1;
    if (value > settings.unitLoadedFraction * level) sum[loadedCount++] = value;
  }
  if (loadedCount < settings.unitLeastShare * count) return undefined;
  const loaded = sum.subarray(0, loadedCount);
  const newtons = orderStatistic(loaded, loadedCount >> 1);
  const peak = orderStatistic(loaded, Math.floor(settings.unitPeakQuantile * (loadedCount - 1)));
  return { newtons, moves: empty >= settings.unitLeastShare * count && peak > settings.unitJumpRatio * newtons };
}

const units: readonly ForceUnit[] = ["N", "kN", "kgf", "lbf"];

/** Says that the load cannot be a person's in the unit it is said to be in, and which unit would make it one. */
export function unitDoubt(columns: readonly ForceColumn[], settings: Settings): readonly Finding[] {
  const [first] = columns;
  const unit = first?.unit;
  const load = unit === undefined ? undefined : standingLoad(columns, settings);
  if (first === undefined || unit === undefined || load === undefined) return [];
  const share = leastMassShare(columns);
  const per = newtonsIn(unit, undefined, settings.gravity);
  if (per === undefined || isPersons(load.newtons, share, settings)) return [];
  const heaviest = settings.bodyMassMaximumKg * settings.gravity;
  if (load.moves && load.newtons > heaviest && load.newtons < settings.unitContactWeights * heaviest) return [];
  const figure = load.newtons / per;
  const likely = units.filter((each) => {
    const newtons = figure * (newtonsIn(each, undefined, settings.gravity) ?? 0);
    return each !== unit && isPersons(newtons, share, settings);
  });
  if (likely.length === 0 && !load.moves) return [];
  const readings = likely.map((each) => {
    const kilograms = (figure * (newtonsIn(each, undefined, settings.gravity) ?? 0)) / settings.gravity;
    return `${each} (${kilogramsText(kilograms)})`;
  });
  const maybeVolts = figure < 10 ? ["volts"] : [];
  const would = [...readings, ...maybeVolts];
  const names = columns.map((column) => column.name).join(", ");
  const source = first.unitFrom === "stated" ? "stated as" : "called";
  return [
    proseFinding(
      "weight-implausible",
      load.moves ? "refusal" : "warning",
      `The forces are ${source} ${unit}, but standing shows ${Number(figure.toPrecision(3))} ${unit}, which would be an athlete of ${kilogramsText(load.newtons / settings.gravity)}${would.length === 0 ? "" : `; the figures may be ${would.join(" or ")}`}.`,
      likely.length === 0
        ? "Export the recording in newtons, or check what the columns hold."
        : `State the unit the figures are in (${likely.map((each) => `--unit ${each}`).join(" or ")})${maybeVolts.length > 0 ? "; volts must be exported in newtons" : ""}.`,
      { where: `column ${names}` },
    ),
  ];
}

function kilogramsText(kilograms: number): string {
  return `${kilograms < 10 ? Number(kilograms.toPrecision(1)) : Math.round(kilograms)} kg`;
}

/** True where a stated unit makes the load a person's and the written one does not: then the person is believed. */
export function overrulesWritten(
  columns: readonly ForceColumn[],
  stated: ForceUnit,
  settings: Settings,
): Finding | undefined {
  const [first] = columns;
  const load = standingLoad(columns, settings);
  if (first?.unit === undefined || first.unit === stated || load === undefined) return undefined;
  const per = newtonsIn(first.unit, undefined, settings.gravity);
  if (per === undefined) return undefined;
  const share = leastMassShare(columns);
  const asStated = (load.newtons / per) * (newtonsIn(stated, undefined, settings.gravity) ?? 0);
  if (isPersons(load.newtons, share, settings) || !isPersons(asStated, share, settings)) return undefined;
  return proseFinding(
    "unit-contradicts",
    "warning",
    `The file says ${first.unit}, in which nobody could stand on the plates; ${stated} was used as stated.`,
    "Correct the unit where the file is exported.",
    { where: `column ${first.name}` },
  );
}

/** One plate of one foot may carry half a person. */
function leastMassShare(columns: readonly ForceColumn[]): number {
  return columns.length === 1 && columns[0]!.limb !== "both" ? 0.5 : 1;
}

function isPersons(newtons: number, share: number, settings: Settings): boolean {
  const massKg = newtons / settings.gravity;
  return massKg >= share * settings.bodyMassMinimumKg && massKg <= settings.bodyMassMaximumKg;
}

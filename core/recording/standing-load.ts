import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { ForceColumn } from "./force-column.ts";
import { type ForceUnit, forceUnits, newtonsIn } from "./force-units.ts";
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
  const likely = fitting(figure, share, settings).filter((each) => each.unit !== unit);
  if (likely.length === 0 && !load.moves) return [];
  return [
    finding(
      "weight-implausible/load",
      load.moves ? "refusal" : "warning",
      {
        unit,
        isStated: first.unitFrom === "stated",
        figure,
        massKg: load.newtons / settings.gravity,
        likely,
        mayBeVolts: figure < mostVolts,
      },
      {
        place: { at: "each column", names: columns.map((column) => column.name) },
        answers: likely.map((each) => ({ unit: each.unit })),
      },
    ),
  ];
}

/** Amplifiers give no more. No setting: it only adds a guess to a sentence. */
const mostVolts = 10;

/** The units in which forces as written, without one, would be those of a person who stands; none where nobody is seen. */
export function unitsThatFit(columns: readonly ForceColumn[], settings: Settings): readonly ForceUnit[] {
  if (columns.some(({ unit }) => unit !== undefined)) return [];
  const load = standingLoad(columns, settings);
  return load === undefined ? [] : fitting(load.newtons, leastMassShare(columns), settings).map(({ unit }) => unit);
}

/** The units in which a figure is the load of a person, with that person's mass. */
function fitting(figure: number, share: number, settings: Settings) {
  return forceUnits.flatMap((unit) => {
    const newtons = figure * (newtonsIn(unit, undefined, settings.gravity) ?? 0);
    return isPersons(newtons, share, settings) ? [{ unit, massKg: newtons / settings.gravity }] : [];
  });
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
  return finding(
    "unit-contradicts/overruled",
    "warning",
    { unit: first.unit, stated },
    { place: { at: "columns", names: [first.name] } },
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

import { normalGravity } from "../../core/ground/gravity.ts";
import { testKinds } from "../../core/ground/test-kind.ts";
import type { ColumnKey } from "../../core/recording/column-key.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";
import { settingsCatalogue } from "../../core/settings/settings.ts";
import type { StatedOptions } from "../../core/stated/stated-options.ts";
import { readKeepOption } from "./keep-option.ts";
import { UsageError } from "./usage-error.ts";

/** Options that state what a file does not say; they outrank session.json. */
export const statingOptionNames = [
  "test",
  "limb",
  "involved",
  "rate",
  "unit",
  "columns",
  "swap-plates",
  "resample",
  "decimal-mark",
  "mass",
  "keep",
  "drop-height",
  "leading-leg",
  "gravity",
  "latitude",
  "altitude",
  "cautions",
  "by",
] as const;

export type StatingOptions = Readonly<Partial<Record<(typeof statingOptionNames)[number], string>>>;

const limbs = ["both", "left", "right"] as const;
const legs = ["left", "right"] as const;
const involvedSides = ["left", "right", "both", "none"] as const;
const units = ["N", "kN", "kgf", "lbf"] as const;
const decimalMarks = ["point", "comma"] as const;
const yesOrNo = ["yes", "no"] as const;
const columnRoles = ["time", "left", "right", "total"] as const;

/** Box heights that can be meant, metres: below lies no box, above the range of session.json ends. */
const lowestBoxMetres = 0.01;
const highestBoxMetres = 2;

type ColumnRole = (typeof columnRoles)[number];

/**
 * Reads the options that state something about the recordings.
 * @throws UsageError naming the option, when a value cannot be.
 */
export function readStatedOptions(options: StatingOptions): StatedOptions {
  const { test, limb, involved, mass, "drop-height": dropHeight, "leading-leg": leadingLeg } = options;
  const layout = readLayout(options);
  const gravity = readGravity(options);
  const cautionsNotKnownBy = readCautions(options);
  return {
    ...(test !== undefined && { test: choice("--test", test, testKinds) }),
    ...(limb !== undefined && { limb: choice("--limb", limb, limbs) }),
    ...(involved !== undefined && { involved: choice("--involved", involved, involvedSides) }),
    ...(layout && { layout }),
    ...(mass !== undefined && {
      massKg: number(
        "--mass",
        mass,
        "kg",
        settingsCatalogue.bodyMassMinimumKg.default,
        settingsCatalogue.bodyMassMaximumKg.default,
      ),
    }),
    ...(options.keep !== undefined && { keep: readKeepOption(options.keep) }),
    ...(dropHeight !== undefined && {
      dropHeightMetres: number("--drop-height", dropHeight, "m", lowestBoxMetres, highestBoxMetres),
    }),
    ...(leadingLeg !== undefined && { leadingLeg: choice("--leading-leg", leadingLeg, legs) }),
    ...(gravity !== undefined && { gravity }),
    ...(cautionsNotKnownBy !== undefined && { cautionsNotKnownBy }),
  };
}

/** `--cautions not-known --by NAME`: who states that what was not asked is not known. */
export function readCautions({ cautions, by }: Pick<StatingOptions, "cautions" | "by">): string | undefined {
  if (cautions === undefined && by === undefined) return undefined;
  if (cautions === undefined) throw new UsageError("--by names who states --cautions not-known; give both.");
  choice("--cautions", cautions, ["not-known"]);
  if (by === undefined || by.trim() === "") {
    throw new UsageError("--cautions not-known is a person's statement: say whose with --by NAME.");
  }
  return by.trim();
}

/** One of a few words. */
export function choice<Word extends string>(option: string, typed: string, words: readonly Word[]): Word {
  const word = words.find((each) => each === typed);
  if (word === undefined) throw new UsageError(`${option} must be one of ${words.join(", ")}, not "${typed}".`);
  return word;
}

function readLayout(options: StatingOptions): LayoutAnswers | undefined {
  const { rate, unit, columns, resample } = options;
  const swapPlates = options["swap-plates"];
  const decimalMark = options["decimal-mark"];
  const roles = columns === undefined ? {} : readColumns(columns);
  const layout: LayoutAnswers = {
    ...(rate !== undefined && { rateHz: number("--rate", rate, "Hz", 1, 1_000_000) }),
    ...(unit !== undefined && { unit: choice("--unit", unit, units) }),
    ...(decimalMark !== undefined && { decimalMark: choice("--decimal-mark", decimalMark, decimalMarks) }),
    ...roles,
    ...((roles.left !== undefined || roles.right !== undefined) && { platesStated: true }),
    ...(swapPlates !== undefined && { swapPlates: choice("--swap-plates", swapPlates, yesOrNo) === "yes" }),
    ...(resample !== undefined && readResample(resample)),
  };
  return Object.keys(layout).length === 0 ? undefined : layout;
}

/** `--resample` alone keeps the rate of the stamps; a number is the rate wanted. */
function readResample(typed: string): Pick<LayoutAnswers, "resample" | "resampleHz"> {
  if (typed === "yes" || typed === "no") return { resample: typed === "yes" };
  return { resample: true, resampleHz: number("--resample", typed, "Hz", 1, 1_000_000) };
}

/**
 * `time=1,left=2+3,right=Force R`: a whole number is a position from 1, several joined by plus signs are added, `time=none`
 * leaves the time column out, anything else is a column's own name.
 */
function readColumns(typed: string): Partial<Record<ColumnRole, ColumnKey>> {
  const columns: Partial<Record<ColumnRole, ColumnKey>> = {};
  for (const part of typed.split(",")) {
    const [role = "", ...rest] = part.split("=");
    const key = rest.join("=").trim();
    const known = columnRoles.find((each) => each === role.trim());
    if (known === undefined || key === "") {
      throw new UsageError(`--columns is written like time=1,left=2,right=3 (or total=2); "${part}" is not.`);
    }
    if (columns[known] !== undefined) throw new UsageError(`--columns names ${known} twice.`);
    columns[known] = /^\d+$/.test(key) ? Number(key) : key;
    if (columns[known] === 0) throw new UsageError("--columns counts columns from 1; there is no column 0.");
  }
  if (new Set(Object.values(columns)).size < Object.keys(columns).length) {
    throw new UsageError("--columns gives one column two meanings.");
  }
  return columns;
}

function readGravity({ gravity, latitude, altitude }: StatingOptions): number | undefined {
  if (gravity !== undefined) {
    if (latitude !== undefined || altitude !== undefined) {
      throw new UsageError("--gravity and --latitude with --altitude exclude each other; give one of them.");
    }
    const { minimum, maximum } = settingsCatalogue.gravity;
    return number("--gravity", gravity, "m/s2", minimum, maximum);
  }
  if (latitude === undefined) {
    if (altitude !== undefined) throw new UsageError("--altitude needs --latitude beside it.");
    return undefined;
  }
  return normalGravity(
    number("--latitude", latitude, "degrees", -90, 90),
    altitude === undefined ? 0 : number("--altitude", altitude, "m", -500, 9000),
  );
}

function number(option: string, typed: string, unit: string, least: number, most: number): number {
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(typed)) {
    throw new UsageError(`${option} must be a number in ${unit} with a decimal point, not "${typed}".`);
  }
  const value = Number(typed);
  if (value < least || value > most) {
    throw new UsageError(`${option} must lie between ${least} and ${most} ${unit}, not ${typed}.`);
  }
  return value;
}

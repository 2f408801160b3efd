import { type Finding, isRefused, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import { type EvenRate, findEvenRate } from "./even-rate.ts";
import { type EvenTarget, evenTarget } from "./resample.ts";
import { guessStampUnit, isPlausibleRate } from "./stamp-unit.ts";
import { printedResolution, typicalStep } from "./stamps.ts";
import { headerRateFindings, hertz, type StatedRate } from "./stated-rate.ts";
import { checkSteps, isCoarserThanStep, type StampColumn, tooCoarse } from "./step-checks.ts";
import { secondsIn, type TimeUnit } from "./time-units.ts";

/** An even time base, or why there is none. */
export interface TimeBase {
  /** Absent when refused. */
  readonly rateHz?: number;
  readonly rateFrom: "time column" | "header" | "stated" | "unknown";
  /** Where the rate stands, in words; "" while unknown. */
  readonly rateSource: string;
  readonly originSeconds: number;
  /** How the stamps were read: "" without a column. */
  readonly unit: TimeUnit | "";
  /** Present where the samples are to be put on another time base. */
  readonly target?: EvenTarget;
  readonly findings: readonly Finding[];
}

/** What is said about time outside the time column. */
export interface TimeStatements {
  /** The person's first, then the header's. */
  readonly rates: readonly StatedRate[];
  /** A sentence on numbers in the header that have no unit; "" where there are none. */
  readonly unitless: string;
  readonly resample?: boolean;
  readonly resampleHz?: number;
}

/** The time base of a recording from its stamps, stated rates, or both. */
export function findTimeBase(
  column: StampColumn | undefined,
  statements: TimeStatements,
  settings: Settings,
): TimeBase {
  const { rates, resampleHz } = statements;
  const [stated] = rates;
  const own = stated?.from === "stated" ? stated.rateHz : undefined;
  if (own !== undefined && !isPlausibleRate(own, settings)) {
    return refused(implausible(`The stated rate of ${hertz(own)}`, settings, "State the rate of the recording"));
  }
  if (resampleHz !== undefined && !isPlausibleRate(resampleHz, settings)) {
    return refused(implausible(`The wanted rate of ${hertz(resampleHz)}`, settings, "Ask for another rate"));
  }
  if (column === undefined) return withoutStamps("The file has no time column.", statements, settings);
  const step = typicalStep(column.stamps, settings);
  if (!(step > 0)) return refused(unordered(column));
  const rateValues = own === undefined ? rates.map((rate) => rate.rateHz) : [own];
  const unit = column.unit === "unknown" ? guessStampUnit(column, step, rateValues, settings) : column.unit;
  if (unit === "unknown") {
    if (stated !== undefined) return refused(contradiction(stated, 1 / step));
    const { writtenUnit } = column;
    const why =
      writtenUnit === ""
        ? "Its time column may count rows, milliseconds or seconds, and the file does not say which."
        : `The unit of its time column (${writtenUnit}) is not one of s, ms and µs.`;
    return refused(rateMissing(why + statements.unitless));
  }
  const resolution = printedResolution(column.stamps);
  if (unit === "index") {
    const evenness = checkSteps(column, step, resolution, false, settings);
    const base = withoutStamps("The file counts its samples but has no times.", statements, settings);
    return { ...base, findings: [...base.findings, ...evenness] };
  }
  return fromStamps(column, unit, step, resolution, statements, settings);
}

/** A time base by its rate alone. */
function withoutStamps(what: string, { rates, unitless, ...wanted }: TimeStatements, settings: Settings): TimeBase {
  const [stated] = rates;
  if (stated === undefined) return refused(rateMissing(what + unitless));
  const { rateHz, from, source } = stated;
  if (!isPlausibleRate(rateHz, settings)) {
    return refused(implausible(`The header's rate of ${hertz(rateHz)} (${source})`, settings, "State the rate"));
  }
  const findings = headerRateFindings({ rateHz, from, toleranceHz: 0 }, rates, settings);
  const target = evenTarget({ rateHz }, wanted, settings);
  return {
    rateHz: target?.toHz ?? rateHz,
    rateFrom: from,
    rateSource: source,
    originSeconds: 0,
    unit: "",
    ...(target === undefined ? {} : { target }),
    findings,
  };
}

function fromStamps(
  column: StampColumn,
  unit: TimeUnit,
  step: number,
  resolution: number,
  { rates, ...wanted }: TimeStatements,
  settings: Settings,
): TimeBase {
  const isResampled = wanted.resample === true || wanted.resampleHz !== undefined;
  const evenness = checkSteps(column, step, resolution, isResampled, settings);
  const scale = secondsIn[unit];
  const failed = { rateFrom: "unknown", rateSource: "", originSeconds: 0, unit } as const;
  if (isRefused(evenness)) return { ...failed, findings: evenness };
  const even = findEvenRate(column.stamps, scale, step, resolution, settings);
  const coarse = coarseFindings(even, step, resolution, unit, settings);
  const findings = [...evenness, ...coarse];
  if (isRefused(coarse)) return { ...failed, findings };
  const { rateHz, toleranceHz } = even;
  if (!isPlausibleRate(rateHz, settings)) {
    return { ...failed, findings: [...findings, wrongUnit(rateHz, unit, settings)] };
  }
  const [own] = rates;
  if (own?.from === "stated") {
    const difference = Math.abs(own.rateHz - rateHz);
    if (difference > settings.timeUnevenFraction * rateHz) findings.push(contradiction(own, rateHz));
    else if (difference > Math.max(toleranceHz, 1e-6 * rateHz)) findings.push(smallContradiction(own, rateHz));
  }
  findings.push(...headerRateFindings({ rateHz, from: "time column", toleranceHz }, rates, settings));
  const isUneven = evenness.some((each) => each.code === "time-uneven");
  const source = isUneven ? { rateHz, seconds: column.stamps.map((stamp) => stamp * scale) } : { rateHz };
  const target = evenTarget(source, wanted, settings);
  return {
    rateHz: target?.toHz ?? rateHz,
    rateFrom: "time column",
    rateSource: "the time column",
    originSeconds: column.stamps[0]! * scale,
    unit,
    ...(target === undefined ? {} : { target }),
    findings,
  };
}

/** What rounding of the stamps hides, or would hide if one rate did not explain every one of them. */
function coarseFindings(
  even: EvenRate,
  step: number,
  resolution: number,
  unit: TimeUnit,
  settings: Settings,
): Finding[] {
  if (!isCoarserThanStep(step, resolution)) {
    return even.explainsAll ? [] : [sampleMayBeMissing(resolution, unit)];
  }
  // With at most two samples to a stamp a missing one moves all later stamps off the line of a whole rate.
  const showsMissing = even.isWhole && step > settings.timeCoarseFraction * resolution;
  if (!even.explainsAll || !showsMissing) return [tooCoarse(resolution)];
  return [
    proseFinding(
      "time-uneven",
      "note",
      `The stamps are printed to ${resolution} ${unit}, coarser than the time step; ${hertz(even.rateHz)} explains every one of them.`,
      "Export the time column with more decimals.",
      { where: "the time column" },
    ),
  ];
}

function refused(first: Finding): TimeBase {
  return { rateFrom: "unknown", rateSource: "", originSeconds: 0, unit: "", findings: [first] };
}

function rateMissing(message: string): Finding {
  return proseFinding(
    "rate-missing",
    "refusal",
    `The sampling rate is not known. ${message}`,
    "State the sampling rate (--rate 1000).",
  );
}

function implausible(subject: string, settings: Settings, action: string): Finding {
  return proseFinding(
    "rate-contradicts",
    "refusal",
    `${subject} is outside ${settings.rateLeastHz} to ${settings.rateMostHz} Hz.`,
    `${action} (--rate 1000).`,
  );
}

const unitNames: Readonly<Record<TimeUnit, string>> = { s: "seconds", ms: "milliseconds", µs: "microseconds" };

/** A time column whose written unit cannot be right, with the units that can. */
function wrongUnit(rateHz: number, unit: TimeUnit, settings: Settings): Finding {
  const others = (["s", "ms", "µs"] as const).flatMap((other) => {
    const otherHz = (rateHz * secondsIn[unit]) / secondsIn[other];
    return other !== unit && isPlausibleRate(otherHz, settings) ? [{ other, otherHz }] : [];
  });
  const readings = others.map(({ other, otherHz }) => `as ${unitNames[other]} it would be ${hertz(otherHz)}`);
  const rate = Number((others[0]?.otherHz ?? 1000).toPrecision(7));
  return proseFinding(
    "rate-contradicts",
    "refusal",
    `The time column in ${unitNames[unit]} gives ${hertz(rateHz)}, outside ${settings.rateLeastHz} to ${settings.rateMostHz} Hz${readings.length === 0 ? "" : `; ${readings.join(", ")}`}.`,
    `Correct the unit above the column, or state the rate and leave the time column out (--rate ${rate} --columns time=none).`,
    { where: "the time column" },
  );
}

function contradiction({ rateHz, from, source }: StatedRate, columnHz: number): Finding {
  const said = from === "stated" ? wasStated(rateHz, source) : `The header says ${hertz(rateHz)} (${source})`;
  return proseFinding(
    "rate-contradicts",
    "refusal",
    `${said}, but the time column gives ${hertz(columnHz)}.`,
    from === "stated"
      ? "Correct the stated rate, or leave it out (--rate) to use the time column."
      : "State the sampling rate (--rate 1000).",
    { where: "the time column" },
  );
}

/** "1000 Hz was stated", "1000 Hz was stated by the layout "Lab A"". */
function wasStated(rateHz: number, source: string): string {
  return `${hertz(rateHz)} was stated${source === "stated" ? "" : ` ${source}`}`;
}

function smallContradiction({ rateHz, source }: StatedRate, columnHz: number): Finding {
  return proseFinding(
    "rate-contradicts",
    "warning",
    `${wasStated(rateHz, source)}, but the time column gives ${hertz(columnHz)}, which was used.`,
    "Leave the stated rate out (--rate) if the time column is right.",
    { where: "the time column" },
  );
}

function sampleMayBeMissing(resolution: number, unit: string): Finding {
  return proseFinding(
    "time-uneven",
    "refusal",
    `No sampling rate explains all stamps, which are printed to ${resolution} ${unit}: a sample may be missing.`,
    "Export the recording with more decimals in the time column.",
    { where: "the time column" },
  );
}

function unordered(column: StampColumn): Finding {
  return proseFinding(
    "time-uneven",
    "refusal",
    "The time column does not rise from row to row.",
    "State which column is time (--columns time=1,left=2,right=3), or export the recording again.",
    { where: `line ${column.lineOfRow[0]}` },
  );
}

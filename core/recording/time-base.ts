import type { Answer } from "../ground/answer.ts";
import { type Finding, finding, isRefused } from "../ground/finding.ts";
import type { UnitlessRate } from "../ground/findings/file-parts.ts";
import type { Settings } from "../settings/settings.ts";
import { type EvenRate, findEvenRate } from "./even-rate.ts";
import { type EvenTarget, evenTarget } from "./resample.ts";
import { guessStampUnit, isPlausibleRate } from "./stamp-unit.ts";
import { printedResolution, typicalStep } from "./stamps.ts";
import { headerRateFindings, plainHertz, rateWithoutTime, type StatedRate } from "./stated-rate.ts";
import { sourceText } from "./statement-source.ts";
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
  /** What the header gives without a unit. */
  readonly unitless?: UnitlessRate;
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
  const own = stated === undefined || stated.source.from === "line" ? undefined : stated.rateHz;
  const bounds = { leastHz: settings.rateLeastHz, mostHz: settings.rateMostHz };
  if (own !== undefined && !isPlausibleRate(own, settings)) {
    return refused(
      finding("rate-contradicts/stated-outside", "refusal", { rateHz: own, ...bounds }, { answers: askedRate }),
    );
  }
  if (resampleHz !== undefined && !isPlausibleRate(resampleHz, settings)) {
    return refused(
      finding(
        "rate-contradicts/wanted-outside",
        "refusal",
        { rateHz: resampleHz, ...bounds },
        { answers: [{ asks: "resampleHz" }] },
      ),
    );
  }
  if (column === undefined) return withoutStamps("no-time-column", statements, settings);
  const step = typicalStep(column.stamps, settings);
  if (!(step > 0)) return refused(unordered(column));
  const rateValues = own === undefined ? rates.map((rate) => rate.rateHz) : [own];
  const unit = column.unit === "unknown" ? guessStampUnit(column, step, rateValues, settings) : column.unit;
  if (unit === "unknown") {
    if (stated !== undefined) return refused(contradiction(stated, 1 / step, settings));
    const { writtenUnit } = column;
    const header = headerOf(statements);
    const answers = rateAnswers(statements, settings);
    return refused(
      writtenUnit === ""
        ? finding("rate-missing/unit-not-said", "refusal", header, { answers })
        : finding("rate-missing/unit-unknown", "refusal", { written: writtenUnit, ...header }, { answers }),
    );
  }
  const resolution = printedResolution(column.stamps);
  if (unit === "index") {
    const evenness = checkSteps(column, step, resolution, false, settings);
    const base = withoutStamps("samples-counted", statements, settings);
    return { ...base, findings: [...base.findings, ...evenness] };
  }
  return fromStamps(column, unit, step, resolution, statements, settings);
}

/** A time base by its rate alone. */
function withoutStamps(
  why: "no-time-column" | "samples-counted",
  statements: TimeStatements,
  settings: Settings,
): TimeBase {
  const { rates, resample, resampleHz } = statements;
  const [stated] = rates;
  if (stated === undefined) {
    const answers = rateAnswers(statements, settings);
    return refused(finding(`rate-missing/${why}`, "refusal", headerOf(statements), { answers }));
  }
  const { rateHz, source } = stated;
  if (!isPlausibleRate(rateHz, settings)) {
    const figures = { rateHz, source, leastHz: settings.rateLeastHz, mostHz: settings.rateMostHz };
    return refused(finding("rate-contradicts/header-outside", "refusal", figures, { answers: askedRate }));
  }
  const from = source.from === "line" ? "header" : "stated";
  const wanted = {
    ...(resample === undefined ? {} : { resample }),
    ...(resampleHz === undefined ? {} : { resampleHz }),
  };
  const findings = headerRateFindings({ rateHz, from, toleranceHz: 0 }, rates, settings);
  const target = evenTarget({ rateHz }, wanted, settings);
  return {
    rateHz: target?.toHz ?? rateHz,
    rateFrom: from,
    rateSource: sourceText(source),
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
  if (own !== undefined && own.source.from !== "line") {
    const difference = Math.abs(own.rateHz - rateHz);
    if (difference > settings.timeUnevenFraction * rateHz) findings.push(contradiction(own, rateHz, settings));
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
    finding("time-uneven/coarse", "note", { resolution, unit, rateHz: even.rateHz }, { place: { at: "time column" } }),
  ];
}

function refused(first: Finding): TimeBase {
  return { rateFrom: "unknown", rateSource: "", originSeconds: 0, unit: "", findings: [first] };
}

const askedRate = [{ asks: "rateHz" }] as const;

function headerOf({ unitless }: TimeStatements): { readonly header?: UnitlessRate } {
  return unitless === undefined ? {} : { header: unitless };
}

/** A number without a unit is hertz or kilohertz, where that is a rate; else only a person knows the rate. */
function rateAnswers({ unitless }: TimeStatements, settings: Settings): readonly Answer[] {
  const number = unitless?.number;
  const readings = number === undefined ? [] : [number, 1000 * number];
  const possible = readings.filter((rateHz) => isPlausibleRate(rateHz, settings));
  return possible.length === 0 ? askedRate : possible.map((rateHz) => ({ rateHz: plainHertz(rateHz) }));
}

/** A time column whose written unit cannot be right, with the units that can. */
function wrongUnit(rateHz: number, unit: TimeUnit, settings: Settings): Finding {
  const readings = (["s", "ms", "µs"] as const).flatMap((other) => {
    const otherHz = (rateHz * secondsIn[unit]) / secondsIn[other];
    return other !== unit && isPlausibleRate(otherHz, settings) ? [{ unit: other, rateHz: otherHz }] : [];
  });
  return finding(
    "rate-contradicts/time-unit",
    "refusal",
    { unit, rateHz, readings, leastHz: settings.rateLeastHz, mostHz: settings.rateMostHz },
    {
      place: { at: "time column" },
      answers: readings.length === 0 ? askedRate : readings.map((each) => rateWithoutTime(each.rateHz)),
    },
  );
}

/** Either rate may be right: the column's is stated as it is, the other takes the column's place. */
function contradiction({ rateHz, source }: StatedRate, columnHz: number, settings: Settings): Finding {
  const ofColumn = isPlausibleRate(columnHz, settings) ? [{ rateHz: plainHertz(columnHz) }] : [];
  return finding(
    "rate-contradicts/time-column",
    "refusal",
    { rateHz, source, columnHz },
    { place: { at: "time column" }, answers: [...ofColumn, rateWithoutTime(rateHz)] },
  );
}

function smallContradiction({ rateHz, source }: StatedRate, columnHz: number): Finding {
  return finding(
    "rate-contradicts/time-column-used",
    "warning",
    { rateHz, source, columnHz },
    { place: { at: "time column" }, answers: [{ rateHz: plainHertz(columnHz) }] },
  );
}

function sampleMayBeMissing(resolution: number, unit: TimeUnit): Finding {
  return finding("time-uneven/no-rate-explains", "refusal", { resolution, unit }, { place: { at: "time column" } });
}

function unordered(column: StampColumn): Finding {
  return finding(
    "time-uneven/not-rising",
    "refusal",
    {},
    { place: { at: "line", line: column.lineOfRow[0]! }, answers: [{ asks: "columns" }] },
  );
}

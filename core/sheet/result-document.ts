import type { Criterion, Status } from "../criteria/criterion.ts";
import type { KneeRow } from "../criteria/knee-rows.ts";
import type { Closure } from "../gate/closure.ts";
import type { Gate } from "../gate/gate.ts";
import type { Finding } from "../ground/finding.ts";
import type { Bearer, InvolvedSide, Limb, Side } from "../ground/limb.ts";
import type { PublishedUnit } from "../ground/units.ts";
import { engineVersion } from "../ground/version.ts";
import type { Measure } from "../measures/measure.ts";
import type { SessionResult, TrialResult } from "../result/result.ts";
import { type SettingName, type Settings, settingsCatalogue, settingsHash } from "../settings/settings.ts";
import type { Comparison, Interval, IntervalSource } from "../sides/comparison.ts";
import type { WeightGroup } from "../weight/another-athlete.ts";
import type { GainDifference } from "../weight/plate-gains.ts";
import { documentComparison, documentCriterion } from "./publish-comparison.ts";
import { documentFinding, documentTrial } from "./publish-trial.ts";

/** Raised when a key changes its meaning or leaves; new optional keys do not raise it. */
const resultSchemaVersion = 2;

/**
 * One trial as published. Beside the keys of METHODS §10 it carries `timeOrigin`, `span` and `weight` (how the numbers
 * were made) and `edits`, `excluded` and `practice` (what a person decided: they identify a result). The *seen* mark stays
 * out: it is a mark of the work in progress and changes no number. While feet are in doubt (`feet`), a limb's measures,
 * events and contact times carry `plate`, the place from 1 in `plates`, and no `side`. `limb` is as stated; it is absent
 * where only the loaded plate's unproved name told it. `legs` says how many legs jumped in any case.
 */
export type DocumentTrial = Omit<TrialResult, "seen" | "sha256" | "measures"> & {
  readonly legs?: "both" | "single";
  readonly measures: readonly DocumentMeasure[];
  /** Absent where the bytes could not be read at all. */
  readonly sha256?: string;
};

/** One measure as published. */
export type DocumentMeasure = Measure & { readonly unit: PublishedUnit };

/** One side, or one plate while feet are in doubt, of a comparison as published. */
export type DocumentSide = Bearer<Side> & DocumentValues;

interface DocumentValues {
  /** Number of trials used. */
  readonly trials: number;
  /** Their values in trial order, in the unit of the comparison. */
  readonly values: readonly number[];
  /** The trial statistic of the settings; absent when no trial has the measure. */
  readonly mean?: number;
  readonly meanPerBodyMass?: number;
}

/**
 * One comparison as published: `involved` and `uninvolved`, `left` and `right` where nobody or both are injured, or
 * `plate1` and `plate2` while feet are in doubt.
 */
export interface DocumentComparison {
  /** The session's folder. */
  readonly session: string;
  readonly test: Comparison["test"];
  readonly legs: Comparison["legs"];
  /** The box all its trials were from, metres; box heights are never mixed. */
  readonly dropHeightMetres?: number;
  readonly measure: string;
  readonly unit: Comparison["unit"];
  readonly basis: Comparison["basis"];
  readonly role: Comparison["role"];
  readonly involved?: DocumentSide;
  readonly uninvolved?: DocumentSide;
  readonly left?: DocumentSide;
  readonly right?: DocumentSide;
  readonly plate1?: DocumentSide;
  readonly plate2?: DocumentSide;
  /** 100 × involved / uninvolved, or 100 × left / right; per cent. */
  readonly index?: number;
  /** First minus second side in the unit of the measure, for times. */
  readonly difference?: number;
  readonly intervals: readonly Interval[];
  readonly intervalFrom?: IntervalSource;
  /** The leg that led off the box in each trial, in step with the values, where both leads are averaged. */
  readonly leads?: readonly Side[];
  /** Why trials that exist cannot be held against each other. */
  readonly notComparable?: string;
  /** How much more the plates of the first side read than those of the second, a part; in the intervals. */
  readonly plateShare?: GainDifference;
  /** Why the index decides nothing although it could be formed. */
  readonly contradiction?: string;
  /** How well it is known which foot stood on which plate; of single-leg trials only where it is in doubt. */
  readonly plates?: Comparison["plates"];
  /** Threshold and status of the symmetry criterion that reads this comparison, where the set has one. */
  readonly threshold?: number;
  readonly status?: Status;
  /** Words that belong directly behind that status word. */
  readonly qualifier?: string;
  readonly reason: string;
}

/** One criterion as it stands, as published. */
export interface DocumentCriterion {
  readonly session: string;
  readonly set: { readonly id: string; readonly version: number };
  readonly id: string;
  readonly kind: Criterion["kind"];
  readonly test: Criterion["test"];
  readonly legs: Criterion["legs"];
  readonly measure: string;
  /** The box the criterion belongs to, metres. */
  readonly dropHeightMetres?: number;
  /** In per cent, or in `unit` where there is one; the same for estimate and interval. */
  readonly threshold: number;
  readonly unit?: Comparison["unit"];
  readonly status: Status;
  /** Words that belong directly behind the status word. */
  readonly qualifier?: string;
  readonly estimate?: number;
  readonly lean?: "met" | "not-met";
  readonly interval?: Interval;
  readonly reason: string;
  readonly moreTrials: string;
  readonly caution: string;
}

/** What closes jump tests, and what of it the named clinician opened. */
interface DocumentGate {
  /** False while every jump test is closed. */
  readonly open: boolean;
  readonly reason: string;
  readonly closures: readonly DocumentClosure[];
  readonly opened: readonly (DocumentClosure & { readonly by: string; readonly because: string })[];
}

interface DocumentClosure {
  readonly code: string;
  readonly closes: readonly string[];
  readonly limbs?: readonly Limb[];
  readonly reason: string;
}

/** What concerns a session as a whole. The athlete is named by code only. */
interface DocumentSession {
  readonly session: string;
  readonly athlete?: string;
  readonly date?: string;
  readonly involved?: InvolvedSide;
  readonly simulated: boolean;
  /** Gravity the session was analysed with, m/s²; it outranks the one of the settings. */
  readonly gravity?: number;
  readonly gate: DocumentGate;
  /** The knee's own rows; empty where nobody is injured. */
  readonly knee: readonly KneeRow[];
  /** The session's plates against each other. */
  readonly plateDifferences?: SessionResult["plateDifferences"];
  /** Two groups of trials whose weights no one person can have; present until somebody says whose they are. */
  readonly anotherAthlete?: { readonly groups: readonly WeightGroup[] };
  readonly findings: readonly Finding[];
}

/** The public result document (METHODS §10). Its JSON Schema is `result.schema.json` beside this file. */
export interface ResultDocument {
  readonly schemaVersion: number;
  readonly engine: { readonly version: string };
  readonly settings: { readonly hash: string; readonly values: Readonly<Record<string, number | string>> };
  readonly sessions: readonly DocumentSession[];
  readonly trials: readonly DocumentTrial[];
  readonly comparisons: readonly DocumentComparison[];
  readonly criteria: readonly DocumentCriterion[];
}

/**
 * Publishes analysed sessions. Order never depends on the order of the argument: sessions by folder, trials by path
 * and then number, comparisons and criteria by session and then as they were computed.
 */
export function resultDocument(results: readonly SessionResult[], settings: Settings): ResultDocument {
  const sessions = [...results].sort((a, b) => compareText(a.folder, b.folder));
  return {
    schemaVersion: resultSchemaVersion,
    engine: { version: engineVersion },
    settings: { hash: settingsHash(settings), values: settingValues(settings) },
    sessions: sessions.map(documentSession),
    trials: sessions
      .flatMap((session) => session.trials.map((trial) => documentTrial(session, trial)))
      .sort((a, b) => compareText(a.file, b.file) || a.trial - b.trial),
    comparisons: sessions.flatMap((session) => session.comparisons.map((each) => documentComparison(session, each))),
    criteria: sessions.flatMap((session) => session.criteria.map((each) => documentCriterion(session, each))),
  };
}

/**
 * The document as JSON text: keys in the order above, two spaces, a final newline, numbers in the shortest form that
 * reads back to the same value.
 * @throws RangeError for a number JSON cannot hold; a measure without a value must be absent, so that is our mistake.
 */
export function resultJson(document: ResultDocument): string {
  return `${JSON.stringify(document, refuseUnwritable, 2)}\n`;
}

function refuseUnwritable(key: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`"${key}" is ${value}; a result without a value must be absent.`);
  }
  return value;
}

/** By code unit, so that every machine and locale sorts alike. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function settingValues(settings: Settings): Record<string, number | string> {
  return Object.fromEntries(Object.keys(settingsCatalogue).map((name) => [name, settings[name as SettingName]]));
}

function documentGate({ open, reason, closures, opened }: Gate): DocumentGate {
  return {
    open,
    reason,
    closures: closures.map(documentClosure),
    opened: opened.map(({ closure, opening }) => ({
      ...documentClosure(closure),
      by: opening.by,
      because: opening.reason,
    })),
  };
}

function documentClosure({ code, loads, limbs, reason }: Closure): DocumentClosure {
  return { code, closes: [...loads], ...(limbs !== undefined && { limbs: [...limbs] }), reason };
}

function documentSession(session: SessionResult): DocumentSession {
  const { athlete, date, involved, simulated } = session.description;
  return {
    session: session.folder,
    ...(athlete && { athlete: athlete.code }),
    ...(date !== undefined && { date }),
    ...(involved !== undefined && { involved }),
    simulated: simulated ?? false,
    ...(session.gravity !== undefined && { gravity: session.gravity }),
    gate: documentGate(session.gate),
    knee: [...session.knee],
    ...(session.plateDifferences && {
      plateDifferences: session.plateDifferences.map(({ first, second, difference, uncertainty, trials }) => ({
        first,
        second,
        difference,
        uncertainty,
        trials,
      })),
    }),
    ...(session.athleteQuestion && {
      anotherAthlete: {
        groups: session.athleteQuestion.groups.map(({ newtons, trials }) => ({
          newtons,
          trials: trials.map(({ file, trial }) => ({ file, trial })),
        })),
      },
    }),
    findings: session.findings.map(documentFinding),
  };
}

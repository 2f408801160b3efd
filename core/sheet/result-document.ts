import type { KneeRow } from "../criteria/knee-rows.ts";
import type { Closure } from "../gate/closure.ts";
import type { Gate } from "../gate/gate.ts";
import type { InvolvedSide, Limb } from "../ground/limb.ts";
import { engineVersion } from "../ground/version.ts";
import type { SessionResult } from "../result/session-result.ts";
import { type SettingName, type Settings, settingsCatalogue, settingsHash } from "../settings/settings.ts";
import type { WeightGroup } from "../weight/another-athlete.ts";
import { type DocumentFinding, documentFinding } from "./document-finding.ts";
import type { DocumentComparison, DocumentCriterion, DocumentTrial } from "./document-shapes.ts";
import { documentComparison, documentCriterion } from "./publish-comparison.ts";
import { documentTrial } from "./publish-trial.ts";

/**
 * Raised when a key changes its meaning or leaves, or a key joins that every reader must expect; new optional keys do not
 * raise it. 3: a finding carries `answers`, and its `action` no longer names options of the command line.
 */
const resultSchemaVersion = 3;

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
  readonly findings: readonly DocumentFinding[];
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
  return { code, closes: [...loads], ...(limbs === undefined ? {} : { limbs: [...limbs] }), reason };
}

function documentSession(session: SessionResult): DocumentSession {
  const { athlete, date, involved, simulated } = session.description;
  return {
    session: session.folder,
    ...(athlete && { athlete: athlete.code }),
    ...(date === undefined ? {} : { date }),
    ...(involved === undefined ? {} : { involved }),
    simulated: simulated ?? false,
    ...(session.gravity === undefined ? {} : { gravity: session.gravity }),
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

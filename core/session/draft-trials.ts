import { weighTrial } from "../events/weigh-trial.ts";
import { type Finding, finding, isRefused } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import { startsFromBox, type TestKind, testFacts } from "../ground/test-kind.ts";
import { headerMass } from "../recording/body-mass.ts";
import type { ReadRecording } from "../recording/recording-as-read.ts";
import type { Settings } from "../settings/settings.ts";
import type { FileEntry } from "../stated/file-entry.ts";
import type { StatedOptions } from "../stated/stated-options.ts";
import { type Assignment, assignTrial } from "../trial/assign-trial.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { deadPlateFindings } from "../trial/dead-plate.ts";
import { equalPlatesFindings } from "../trial/equal-plates.ts";
import { meanAndDeviation } from "../trial/force-signal.ts";
import { loadChanges } from "../trial/load-changes.ts";
import { loadedPlates } from "../trial/loaded-plate.ts";
import { brokenOffFinding, noAttempt } from "../trial/no-attempt.ts";
import { type PreparedRecording, prepareRecording } from "../trial/prepare-recording.ts";
import { recogniseTest } from "../trial/recognise-test.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { smoothedFindings } from "../trial/smoothed-finding.ts";
import { stuckFindings } from "../trial/stuck-findings.ts";
import { testContradictions } from "../trial/test-contradictions.ts";
import { offerTest } from "./offer-test.ts";
import { entryOf } from "./session-entries.ts";
import type { SessionStatements } from "./session-input.ts";
import { withSeveralAthletes } from "./several-athletes.ts";
import type { TrialDraft } from "./trial-draft.ts";

/** The trials of one file: at least one, so that a refused file is reported too. */
export function draftTrials(read: ReadRecording, input: SessionStatements, settings: Settings): readonly TrialDraft[] {
  const { file, recording } = read;
  const prepared = recording === undefined ? undefined : prepareRecording(recording, settings);
  const findings = [...read.findings, ...(prepared?.findings ?? [])];
  const said = entryOf(input.description, file.path, 1);
  const stated = assignTrial(file.path, { ...said, ...input.stated }, undefined);
  const cuts = prepared === undefined ? [] : attemptsFor(prepared, stated.test);
  if (prepared === undefined || cuts.length === 0 || isRefused(findings)) {
    const missing =
      prepared === undefined || cuts.length > 0 || isRefused(findings)
        ? []
        : noAttempt(prepared, stated.test, settings);
    return [
      {
        file,
        trial: 1,
        ...(prepared === undefined ? {} : { prepared }),
        ...known(stated, said, input, file.path, 1),
        limbFromPlates: false,
        otherFootWeighed: false,
        findings: [...findings, ...missing],
      },
    ];
  }
  const drafts = cuts.map((cut, index) => draftOne(read, prepared, cut, index + 1, findings, input, settings));
  return withSeveralAthletes(drafts, input.stated.massKg ?? input.description.massKg, settings);
}

/** The attempts of a recording that may be of the stated test. */
function attemptsFor({ jumps, landings }: PreparedRecording, test: TestKind | undefined): readonly JumpCut[] {
  if (test !== undefined && testFacts(test).flights === "none") return landings.length > 0 ? landings : jumps;
  const mayLand = test === undefined || startsFromBox(test);
  return jumps.length > 0 || !mayLand ? jumps : landings;
}

function draftOne(
  read: ReadRecording,
  prepared: PreparedRecording,
  cut: JumpCut,
  trial: number,
  fileFindings: readonly Finding[],
  input: SessionStatements,
  settings: Settings,
): TrialDraft {
  const said = entryOf(input.description, read.file.path, trial);
  const { plates, rateHz } = prepared.recording;
  const loaded = loadedPlates(plates, prepared.forces, cut, rateHz, settings);
  const recognised = recogniseTest(prepared, cut, settings);
  const offered = offerTest(prepared, cut, recognised, settings);
  const assigned = assignTrial(read.file.path, { ...said, ...input.stated }, loaded.limb, offered);
  const { test, limb } = assigned;
  const contradicted = test === undefined ? [] : testContradictions(test, cut, recognised, settings);
  const { findings, ...weighed } = weighTrial(prepared.total, cut, test ?? recognised.test, settings);
  const dead = limb === "both" ? deadPlateFindings(prepared, cut, weighed.weighing !== undefined, settings) : [];
  // Force above the plate's range is missing from the momentum between the two windows.
  const clipped = prepared.clipped.some(({ span }) => span.end > cut.span.start && span.start < cut.span.end);
  const { balance, ...unbalanced } = weighed;
  const massInHeader = read.reading?.kind === "delimited" ? headerMass(read.reading.hints) : undefined;
  return {
    file: read.file,
    trial,
    prepared,
    cut,
    ...(offered.test === undefined ? {} : { recognised: offered }),
    ...known(assigned, said, input, read.file.path, trial),
    ...unbalanced,
    ...(balance === undefined || clipped ? {} : { balance }),
    ...(massInHeader === undefined ? {} : { headerMass: massInHeader }),
    ...(loaded.only === undefined ? {} : { loadedPlate: loaded.only.name }),
    otherFootWeighed: otherFootCarries(prepared, loaded.only?.name, weighed.weighing?.window, settings),
    findings: [
      ...fileFindings,
      ...assigned.findings,
      ...stuckFindings(prepared, cut, weighed.still?.window),
      ...dead,
      ...equalPlatesFindings(prepared, settings),
      ...smoothedFindings(prepared, cut, settings),
      ...(dead.length > 0 || weighed.weighing === undefined
        ? []
        : loadChanges(prepared, cut, weighed.weighing, settings)),
      ...contradicted,
      ...limbContradictions(limb, loaded.limb, plates.length),
      ...findings,
      ...brokenOffBefore(prepared, cut, test),
    ],
  };
}

/** What is known about a trial besides its recording: options outrank its own entry, that the session's. */
function known(
  { test, limb, limbFromPlates }: Assignment,
  said: Partial<FileEntry>,
  { stated, description }: SessionStatements,
  path: string,
  trial: number,
): Pick<
  TrialDraft,
  | "test"
  | "limb"
  | "limbFromPlates"
  | "dropHeightMetres"
  | "leadingLeg"
  | "edits"
  | "kept"
  | "seen"
  | "practice"
  | "excluded"
> {
  const drops = test !== undefined && startsFromBox(test);
  const dropHeightMetres = drops
    ? (stated.dropHeightMetres ?? said.dropHeightMetres ?? description.dropHeightMetres)
    : undefined;
  const leadingLeg =
    drops && limb === "both" ? (stated.leadingLeg ?? said.leadingLeg ?? description.leadingLeg) : undefined;
  return {
    limbFromPlates,
    ...(test === undefined ? {} : { test }),
    ...(limb === undefined ? {} : { limb }),
    ...(dropHeightMetres === undefined ? {} : { dropHeightMetres }),
    ...(leadingLeg === undefined ? {} : { leadingLeg }),
    edits: said.events ?? [],
    kept: said.kept === true || isKept(path, trial, stated.keep),
    seen: said.seen ?? false,
    ...(said.practice === true ? { practice: true } : {}),
    ...(said.excluded === undefined ? {} : { excluded: said.excluded }),
  };
}

function isKept(path: string, trial: number, keep: StatedOptions["keep"] = []): boolean {
  return keep.some((each) => each.file === path && (each.trial === undefined || each.trial === trial));
}

/** True when the plate that did not carry the push is loaded on average over a window. */
function otherFootCarries(
  { recording, forces }: PreparedRecording,
  loadedPlate: string | undefined,
  window: SampleSpan | undefined,
  settings: Settings,
): boolean {
  if (loadedPlate === undefined || window === undefined) return false;
  return recording.plates.some(
    ({ name }, index) =>
      name !== loadedPlate &&
      meanAndDeviation(forces[index]!, window.start, window.end).mean > settings.otherFootNewtons,
  );
}

/** Movements that were broken off before this jump; the descent into a squat jump's hold is none. */
function brokenOffBefore(prepared: PreparedRecording, cut: JumpCut, test: TestKind | undefined): readonly Finding[] {
  if (cut.kind !== "standing" || (test !== undefined && testFacts(test).start === "hold")) return [];
  return prepared.brokenOff
    .filter((span) => span.start >= cut.span.start && span.end <= cut.flight.start)
    .map((span) => brokenOffFinding(span, prepared.total.rateHz, "note"));
}

function limbContradictions(limb: Limb | undefined, loaded: Limb | undefined, plates: number): readonly Finding[] {
  if (plates < 2 || limb === undefined) return [];
  if (limb === "both" && loaded !== "both") {
    return [finding("test-contradicts/two-legs", "refusal", {}, { answers: [{ limb: "left" }, { limb: "right" }] })];
  }
  if (limb !== "both" && loaded === "both") {
    return [finding("test-contradicts/one-leg", "refusal", { limb }, { answers: [{ limb: "both" }] })];
  }
  return [];
}

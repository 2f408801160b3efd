import type { ReadRecording, SessionInput } from "./analysis.ts";
import type { EventEdit } from "./events/event.ts";
import type { Weighing, WeightEstimate } from "./events/weigh.ts";
import { weighJump } from "./events/weigh-jump.ts";
import { type Finding, finding, isRefused } from "./finding.ts";
import type { Limb } from "./limb.ts";
import type { FileEntry, SessionDescription } from "./session.ts";
import type { Settings } from "./settings.ts";
import type { TestKind } from "./test-kind.ts";
import { assignTrial } from "./trial/assign-trial.ts";
import type { JumpCut } from "./trial/cut-trials.ts";
import { loadedPlates } from "./trial/loaded-plate.ts";
import { type PreparedRecording, prepareRecording } from "./trial/prepare-recording.ts";

/** One attempt, cut, assigned and weighed, before its events are looked for. */
export interface TrialDraft {
  readonly file: { readonly path: string; readonly sha256: string };
  /** Counted from 1 within its file. */
  readonly trial: number;
  readonly test?: TestKind;
  readonly limb?: Limb;
  /** Absent when the file was refused. */
  readonly prepared?: PreparedRecording;
  /** Absent when the file holds no jump. */
  readonly cut?: JumpCut;
  readonly weighing?: Weighing;
  readonly balance?: WeightEstimate;
  /** The plate that alone carried the push, on two plates. */
  readonly loadedPlate?: string;
  /** True when only the loaded plate told the limb. */
  readonly limbFromPlates: boolean;
  readonly edits: readonly EventEdit[];
  readonly excluded?: { readonly reason: string };
  readonly seen: boolean;
  readonly findings: readonly Finding[];
}

/** The trials of one file: at least one, so that a refused file is reported too. */
export function draftTrials(read: ReadRecording, input: SessionInput, settings: Settings): readonly TrialDraft[] {
  const { file, recording } = read;
  const prepared = recording === undefined ? undefined : prepareRecording(recording, settings);
  const findings = [...read.findings, ...(prepared?.findings ?? [])];
  if (prepared === undefined || prepared.jumps.length === 0 || isRefused(findings)) {
    const said = entryOf(input.description, file.path, 1);
    const stated = assignTrial(file.path, { ...said, ...input.stated }, undefined);
    const { test, limb } = stated;
    return [
      {
        file,
        trial: 1,
        limbFromPlates: false,
        ...(prepared === undefined ? {} : { prepared }),
        ...(test === undefined ? {} : { test }),
        ...(limb === undefined ? {} : { limb }),
        ...decisions(said),
        findings,
      },
    ];
  }
  return prepared.jumps.map((cut, index) => draftOne(read, prepared, cut, index + 1, findings, input, settings));
}

function draftOne(
  read: ReadRecording,
  prepared: PreparedRecording,
  cut: JumpCut,
  trial: number,
  fileFindings: readonly Finding[],
  input: SessionInput,
  settings: Settings,
): TrialDraft {
  const said = entryOf(input.description, read.file.path, trial);
  const { plates, rateHz } = prepared.recording;
  const loaded = loadedPlates(plates, prepared.forces, cut, rateHz, settings);
  const assigned = assignTrial(read.file.path, { ...said, ...input.stated }, loaded.limb);
  const weighed = weighJump(prepared.total, cut, settings);
  const { weighing, findings } = weighed;
  // Force above the plate's range is missing from the momentum between the two windows.
  const clipped = prepared.clipped.some(({ span }) => span.end > cut.span.start && span.start < cut.span.end);
  const balance = clipped ? undefined : weighed.balance;
  const { test, limb } = assigned;
  return {
    file: read.file,
    trial,
    prepared,
    cut,
    limbFromPlates: assigned.limbFromPlates,
    ...(test === undefined ? {} : { test }),
    ...(limb === undefined ? {} : { limb }),
    ...(weighing === undefined ? {} : { weighing }),
    ...(balance === undefined ? {} : { balance }),
    ...(loaded.only === undefined ? {} : { loadedPlate: loaded.only.name }),
    ...decisions(said),
    findings: [...fileFindings, ...assigned.findings, ...contradictions(limb, loaded.limb, plates.length), ...findings],
  };
}

/** What was said about a trial: entries for the whole file first, then those for the trial itself. */
export function entryOf(description: SessionDescription, path: string, trial: number): Partial<FileEntry> {
  const entries = (description.files ?? []).filter((entry) => entry.file === path);
  const whole = entries.filter((entry) => entry.trial === undefined);
  const own = entries.filter((entry) => entry.trial === trial);
  return Object.assign({}, ...whole, ...own);
}

function decisions(said: Partial<FileEntry>): Pick<TrialDraft, "edits" | "seen" | "excluded"> {
  return {
    edits: said.events ?? [],
    seen: said.seen ?? false,
    ...(said.excluded === undefined ? {} : { excluded: said.excluded }),
  };
}

function contradictions(limb: Limb | undefined, loaded: Limb | undefined, plates: number): readonly Finding[] {
  if (plates < 2 || limb === undefined) return [];
  if (limb === "both" && loaded !== "both") {
    return [
      finding(
        "test-contradicts",
        "refusal",
        "The trial is called a two-leg jump, but only one plate carried the push.",
        "State the limb that jumped, or check the other plate.",
      ),
    ];
  }
  if (limb !== "both" && loaded === "both") {
    return [
      finding(
        "test-contradicts",
        "refusal",
        `The trial is called a single-leg jump (${limb}), but both plates carried the push.`,
        "State the limb as both, or repeat the jump on one leg.",
      ),
    ];
  }
  return [];
}

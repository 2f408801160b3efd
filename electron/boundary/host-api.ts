import type { DecimalMark } from "../../core/bytes/number-text.ts";
import type { Limb, Side } from "../../core/ground/limb.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import type { ForceUnit } from "../../core/recording/force-units.ts";
import type { OtherKind } from "../../core/recording/other-kinds.ts";
import type { PlateOutline } from "../../core/recording/outline-plate.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import type { Alignment, CurveOverlay } from "../../core/sides/curves.ts";
import type { EventEdit } from "../../core/stated/event-edit.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { StatedPlate } from "../../core/stated/stated-plate.ts";
import type { CautionAddition } from "../cautions/caution-addition.ts";
import type { StartedFrom } from "../refusals/field-conflict.ts";
import type { MadeFile } from "./made-file.ts";
import type { RegisterApi } from "./register-api.ts";
import type { NextRecordings, WatchView } from "./watch-view.ts";
import type { RecordingView, StepRequest, Workspace } from "./workspace-view.ts";

/** Answers to what a file could not say. Absent parts stay as they are; `null` takes a statement back. */
export interface RecordingAnswers extends TrialAssignment {
  readonly rateHz?: number | null;
  readonly unit?: ForceUnit | null;
  readonly decimalMark?: DecimalMark | null;
  /** True when the feet stood on each other's plates. */
  readonly swapPlates?: boolean | null;
  /** An even time base, at the rate of the stamps or at `resampleHz`. */
  readonly resample?: boolean | null;
  readonly resampleHz?: number | null;
  /** All columns that are stated, as a whole. */
  readonly columns?: NonNullable<FileEntry["columns"]> | null;
}

/** What a trial is; absent parts stay as they are, `null` takes a statement back. */
export interface TrialAssignment {
  readonly test?: TestKind | null;
  readonly limb?: Limb | null;
  /** Height of the box, metres, in tests that start from one. */
  readonly dropHeightMetres?: number | null;
  /** The leg that steps off the box first. */
  readonly leadingLeg?: Side | null;
  /** A practice jump: always a landing, never an attempt. */
  readonly practice?: boolean | null;
}

/** What one row of the assignment is stated to be: a whole file, or one trial of it. */
export interface AssignedRow extends TrialAssignment {
  readonly file: string;
  readonly trial?: number;
}

/** A stretch of a file as text. */
export interface FileLines {
  /** Number of the first line given, from 1. */
  readonly first: number;
  readonly lines: readonly string[];
  /** Lines in the whole file. */
  readonly total: number;
}

/** The force of a whole file as it was understood, thinned out for drawing. */
export interface RecordingOutline {
  readonly plates: readonly PlateOutline[];
  readonly durationSeconds: number;
  /** The trials cut from it, by their seconds in the recording. */
  readonly trials: readonly { readonly trial: number; readonly from: number; readonly to: number }[];
}

/** What became of one file that was handed in. */
export interface TakenFile {
  /** The session it went to. */
  readonly folder: string;
  readonly outcome: RecordingView["outcome"] | "session" | "left aside";
  readonly message: string;
  /** What it is, where it is no recording and was left aside. */
  readonly kind?: OtherKind;
  /** Open recordings with the same bytes, elsewhere. */
  readonly sameAs: readonly string[];
}

/** A change to one trial; absent parts stay as they are. `excluded: null` takes an exclusion back. */
export interface TrialChange {
  readonly excluded?: { readonly reason: string } | null;
  /** Keeps a trial in means although its weight differs, or holds it again. */
  readonly kept?: boolean;
  readonly seen?: boolean;
  /** The whole list of moved events; an empty list resets all to detected. */
  readonly events?: readonly EventEdit[];
}

/** The parts of a session's description a screen may change. Absent parts stay as they are; `null` takes one away. */
export type SessionChange = {
  readonly [Name in ChangeablePart]?: SessionDescription[Name] | null;
};

type ChangeablePart =
  | "athlete"
  | "involved"
  | "injury"
  | "date"
  | "milestone"
  | "massKg"
  | "protocol"
  | "plates"
  | "operation"
  | "stopped"
  | "note";

type Nothing = Readonly<Record<string, never>>;

/** What the screen showed of the session when the change began. */
type Started = StartedFrom<SessionDescription>;

/**
 * The boundary between the screen and the host: one typed map of request → reply. Windows reach it over Electron's
 * message channel, browsers over the loopback server; both end in the same handlers.
 */
export interface HostApi extends RegisterApi {
  "application.describe": {
    readonly request: Nothing;
    readonly reply: {
      readonly version: string;
      readonly host: "window" | "browser";
      /** The key store of the operating system for the register's passphrase: whether there is one, and holds it. */
      readonly passphraseStore: "absent" | "empty" | "holds it";
    };
  };
  "workspace.read": { readonly request: Nothing; readonly reply: Workspace };
  /** Opens the simulated demo world, leaving what was open. */
  "workspace.openDemo": { readonly request: Nothing; readonly reply: Workspace };
  /** Closes everything, ready for recordings. */
  "workspace.clear": { readonly request: Nothing; readonly reply: Workspace };
  "workspace.show": { readonly request: { readonly folder: string }; readonly reply: Workspace };
  "workspace.undo": { readonly request: StepRequest; readonly reply: Workspace };
  "workspace.redo": { readonly request: StepRequest; readonly reply: Workspace };
  /**
   * Takes one file in. `path` is relative with forward slashes; its folder is its session; a file called session.json
   * describes its folder. Answers shortly; the screen reads the workspace when a batch is done.
   */
  "recordings.add": {
    readonly request: {
      readonly path: string;
      readonly bytes: Uint8Array;
      /** Names the batch the file came in with: its folders never run into those of other batches. */
      readonly batch?: string;
    };
    readonly reply: TakenFile;
  };
  /**
   * Ends a batch: a folder whose name was open before joins that session where it is the same one, and stays beside it
   * where it is another. Says where each such folder is now.
   */
  "recordings.endBatch": {
    readonly request: { readonly batch: string };
    readonly reply: {
      readonly places: readonly { readonly folder: string; readonly session: string; readonly message: string }[];
    };
  };
  /** Takes recordings out of their session, as one step that can be taken back; in the register they lie in the bin. */
  "recordings.takeOut": {
    readonly request: { readonly folder: string; readonly files: readonly string[] };
    readonly reply: Workspace;
  };
  /** Lines of a file as text, at most `lineLimit` of them. */
  "recordings.lines": {
    readonly request: {
      readonly folder: string;
      readonly file: string;
      readonly first: number;
      readonly count: number;
    };
    readonly reply: FileLines;
  };
  "recordings.outline": {
    readonly request: { readonly folder: string; readonly file: string };
    /** Absent where nothing was understood as force. */
    readonly reply: { readonly outline?: RecordingOutline };
  };
  /** States what some trials are, as one step that can be taken back. */
  "recordings.assign": {
    readonly request: { readonly folder: string; readonly rows: readonly AssignedRow[] } & Started;
    readonly reply: Workspace;
  };
  /** Remembers what was answered for a file, for every file of its shape. */
  "layouts.remember": {
    readonly request: { readonly folder: string; readonly file: string; readonly name: string };
    readonly reply: Workspace;
  };
  "layouts.rename": { readonly request: { readonly name: string; readonly to: string }; readonly reply: Workspace };
  "layouts.remove": { readonly request: { readonly name: string }; readonly reply: Workspace };
  /** Takes in a layout that was exported as JSON. */
  "layouts.import": { readonly request: { readonly bytes: Uint8Array }; readonly reply: Workspace };
  "layouts.export": { readonly request: { readonly name: string }; readonly reply: MadeFile };
  /** Lets the person choose a folder in the system's own dialog; no folder where it was left, or in a browser. */
  "watch.choose": { readonly request: Nothing; readonly reply: { readonly folder?: string } };
  /** Watches a folder of this computer, given with its whole path, and takes in what appears there. */
  "watch.start": { readonly request: { readonly folder: string }; readonly reply: WatchView };
  "watch.stop": { readonly request: Nothing; readonly reply: WatchView };
  "watch.read": { readonly request: Nothing; readonly reply: WatchView };
  /** What the next recordings are, as the tester says; an empty one takes it back. */
  "watch.expect": { readonly request: { readonly next: NextRecordings }; readonly reply: WatchView };
  "recordings.answer": {
    readonly request: {
      readonly folder: string;
      readonly files: readonly string[];
      readonly answers: RecordingAnswers;
    } & Started;
    readonly reply: Workspace;
  };
  "session.change": {
    readonly request: { readonly folder: string; readonly change: SessionChange } & Started;
    readonly reply: Workspace;
  };
  /**
   * Adds answers to the cautions, readings of pain and effusion, or the named clinician's opening. They are kept for good
   * and are no step that can be taken back.
   */
  "cautions.add": {
    readonly request: { readonly folder: string; readonly addition: CautionAddition };
    readonly reply: Workspace;
  };
  "trials.change": {
    readonly request: {
      readonly folder: string;
      readonly file: string;
      readonly trial: number;
      readonly change: TrialChange;
    } & Started;
    readonly reply: Workspace;
  };
  /** Decides about several trials in one step: keeps them although their weight differs, or excludes them. */
  "trials.keepOrExclude": {
    readonly request: {
      readonly folder: string;
      readonly trials: readonly { readonly file: string; readonly trial: number }[];
      readonly decision: Pick<TrialChange, "kept" | "excluded">;
    };
    readonly reply: Workspace;
  };
  /**
   * States which foot stood on which column in all trials of some files, as one step that can be taken back. `swap`
   * turns what each file's plates are now taken for; a side says which foot stood on plate 1, the first in the order of
   * each file; an empty list takes the statement away.
   */
  "trials.statePlates": {
    readonly request: {
      readonly folder: string;
      readonly files: readonly string[];
      readonly feet: "swap" | Side | readonly StatedPlate[];
    } & Started;
    readonly reply: Workspace;
  };
  "trials.trace": {
    readonly request: { readonly folder: string; readonly file: string; readonly trial: number };
    readonly reply: TrialTrace;
  };
  "sides.curves": {
    readonly request: {
      readonly folder: string;
      readonly test: TestKind;
      readonly legs: "both" | "single";
      readonly alignedAt: Alignment;
      /** Only trials from this box, metres. */
      readonly dropHeightMetres?: number;
      /** Only trials in which this leg stepped off the box first. */
      readonly leadingLeg?: Side;
    };
    /** Absent when a side has no trial to draw. */
    readonly reply: { readonly overlay?: CurveOverlay };
  };
  "sheet.read": { readonly request: { readonly folder: string }; readonly reply: SheetDocument };
  /** `json` and `csv` are the result document of the session; `session` is its session.json with all decisions. */
  "files.make": {
    readonly request: { readonly folder: string; readonly format: "pdf" | "html" | "csv" | "json" | "session" };
    readonly reply: MadeFile;
  };
}

export type HostRequestName = keyof HostApi;

/** What the renderer calls, however the host is reached. */
export interface Host {
  call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]): Promise<HostApi[Name]["reply"]>;
}

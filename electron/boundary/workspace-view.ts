import type { Finding } from "../../core/ground/finding.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { RememberedAnswers } from "../../core/recording/reading-statements.ts";
import type { LayoutShape } from "../../core/recording/shape-schema.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { FieldConflict } from "../refusals/field-conflict.ts";
import type { FileOutcome } from "./file-outcome.ts";
import type { RegisterView } from "./register-view.ts";

/** One imported file and what was understood of it. */
export interface RecordingView {
  readonly file: string;
  readonly byteLength: number;
  readonly outcome: FileOutcome;
  readonly reading?: FileReading;
  readonly findings: readonly Finding[];
  readonly trials: number;
  /** Recordings with the same bytes in other sessions, "month-6/jump-1.csv". */
  readonly sameAs: readonly string[];
}

/** The state every screen draws from. */
export interface Workspace {
  readonly demo: boolean;
  /** Every session at hand, in order. */
  readonly sessions: readonly {
    readonly folder: string;
    readonly title: string;
    readonly subtitle: string;
    /** Of a session that is over: not all of its cautions were answered, and nobody stated that they are not known. */
    readonly lacksAnswers?: true;
  }[];
  /** Folder of the session shown; "" when there is none or it holds loose files. */
  readonly folder: string;
  /** The session shown; absent while nothing is open. */
  readonly session?: SessionResult;
  readonly recordings: readonly RecordingView[];
  /** What undo and redo would take back or do again, in words; "" when there is nothing. */
  readonly undo: string;
  readonly redo: string;
  /** The same steps by their numbers, to be asked for by; absent where there is none. */
  readonly undoStep?: OfferedStep;
  readonly redoStep?: OfferedStep;
  /** What the last request took back or did again, in a sentence; absent after anything else. */
  readonly stepped?: string;
  /** Fields the request wanted to change that were changed elsewhere: nothing was changed, the person is to choose. */
  readonly conflict?: readonly FieldConflict[];
  /** Whether the last exclusion or moved event changed a status, in a sentence; "" after anything else. */
  readonly effect: string;
  /** True when decisions would be lost by closing: made, and not yet taken along as session.json. */
  readonly unsaved: boolean;
  /** The saved layouts of this person, by name. */
  readonly layouts: readonly SavedLayout[];
  /** Why files in the folder of the saved layouts are not used, a sentence each. */
  readonly unusableLayouts: readonly string[];
  /** The part of the program that computes came to an end and was started again: why, and what that means. */
  readonly restarted?: string;
  /** The record of the session shown, where it is kept in the register. */
  readonly keptAs?: string;
  /** The register that is open; absent where the host has none. */
  readonly register?: RegisterView;
}

/** What undo or redo would do while a session is shown: its newest step, or a newer one that reaches beyond it. */
export interface OfferedStep {
  readonly step: number;
  /** What it changes beyond the session shown, in words; it is only done after a person agreed to that. */
  readonly beyond?: string;
  /** The newest step of the session alone, where the offered one reaches beyond it. */
  readonly within?: { readonly step: number; readonly words: string };
}

/** A saved layout in the list of those that are kept. */
export interface SavedLayout {
  readonly name: string;
  readonly shape: LayoutShape;
  readonly answers: RememberedAnswers;
}

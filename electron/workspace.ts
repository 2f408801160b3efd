import { existsSync } from "node:fs";
import type { SessionAnalysis, TrialTrace } from "../core/analysis.ts";
import { analyzeSession } from "../core/analyze.ts";
import { statusChanges } from "../core/criteria/status-changes.ts";
import type { EventEdit } from "../core/events/event.ts";
import { overlaySession } from "../core/overlay-session.ts";
import type { TrialResult } from "../core/result.ts";
import { parseSessionFile } from "../core/session-file.ts";
import type { Settings } from "../core/settings.ts";
import type { CurveOverlay } from "../core/sides/curves.ts";
import { traceTrial } from "../core/trace-trial.ts";
import { EditHistory, type Stated } from "./edit-history.ts";
import { answerWords, sessionChangeWords, statedPlatesWords, trialChangeWords } from "./edit-words.ts";
import type { HostApi, RecordingAnswers, SessionChange, TrialChange, Workspace } from "./host-api.ts";
import { readFolder } from "./read-folder.ts";
import { isRecordingName, joinPath, sessionFileName, splitPath } from "./recording-names.ts";
import { trialsOf, viewRecording } from "./recording-view.ts";
import { RequestRefused } from "./request-refused.ts";
import { withAnswers, withSessionChange, withStatedPlates, withTrialChange } from "./session-edits.ts";
import { listSessions, sessionToBeginWith } from "./session-list.ts";
import { recordingFile, type StoredSession, sessionInput, withFile } from "./stored-session.ts";
import { swappedFeet } from "./swapped-feet.ts";

/** Most bytes of recordings held at a time. */
const totalByteLimit = 1024 * 1024 * 1024;

const nothingStated: Stated = { description: {}, findings: [] };

/**
 * Everything that is open, in memory: imported bytes, what was said about them, and the steps that can be taken back.
 * Results are computed when they are asked for and kept only while nothing they depend on has changed.
 */
export class WorkspaceState {
  readonly settings: Settings;
  readonly #sampleTraces: string;
  readonly #sessions = new Map<string, StoredSession>();
  readonly #analyses = new WeakMap<StoredSession, SessionAnalysis>();
  readonly #history = new EditHistory();
  #shown = "";
  #demo = false;
  #effect = "";
  /** What was stated about each session when it was read, or last taken along. */
  readonly #kept = new Map<string, Stated["description"]>();

  /** @param sampleTraces folder of the demo world's recordings */
  constructor(settings: Settings, sampleTraces: string) {
    this.settings = settings;
    this.#sampleTraces = sampleTraces;
  }

  /** The state every screen draws from. */
  read(): Workspace {
    const session = this.#sessions.get(this.#shown);
    const analysis = session && this.#analysisOf(session);
    return {
      demo: this.#demo,
      sessions: listSessions(this.#sessions.values()),
      folder: this.#shown,
      ...(analysis && { session: analysis.result }),
      recordings: session && analysis ? session.files.map((file) => viewRecording(file, analysis)) : [],
      undo: this.#history.undoWords,
      redo: this.#history.redoWords,
      effect: this.#effect,
      unsaved: this.#isUnsaved(),
    };
  }

  /** Opens the demo world, leaving what was open. */
  openDemo(): void {
    this.clear();
    const folders = existsSync(this.#sampleTraces) ? readFolder(this.#sampleTraces) : [];
    const found = folders.map(({ folder, files, description, descriptionFindings }) => ({
      folder,
      files,
      stated: { description, findings: descriptionFindings },
    }));
    if (found.length === 0) throw new RequestRefused("The demo recordings are missing from this installation.");
    for (const session of found) this.#sessions.set(session.folder, session);
    this.#demo = true;
    this.#shown = sessionToBeginWith(found)?.folder ?? "";
  }

  /** Closes everything. */
  clear(): void {
    this.#sessions.clear();
    this.#kept.clear();
    this.#history.clear();
    this.#effect = "";
    this.#shown = "";
    this.#demo = false;
  }

  /** True when a session with this folder, or one below it, is open. */
  holdsWithin(folder: string): boolean {
    return [...this.#sessions.keys()].some((each) => each === folder || each.startsWith(`${folder}/`));
  }

  /** True when a session with this folder is open. */
  holds(folder: string): boolean {
    return this.#sessions.has(folder);
  }

  show(folder: string): void {
    this.#session(folder);
    this.#shown = folder;
  }

  /** Takes one file in; the demo world gives way to a person's own recordings. */
  add(path: string, bytes: Uint8Array): HostApi["recordings.add"]["reply"] {
    const { folder, name } = splitPath(path);
    const isSession = name === sessionFileName;
    if (!isSession && !isRecordingName(name)) {
      return { folder, outcome: "refused", message: `${name} is no recording and was left out.` };
    }
    if (this.#demo) this.clear();
    const before = this.#sessions.get(folder) ?? { folder, files: [], stated: nothingStated };
    if (this.#sessions.size === 0) this.#shown = folder;
    if (isSession) return this.#addDescription(before, bytes);
    if (this.#byteLength() + bytes.byteLength > totalByteLimit) {
      return { folder, outcome: "refused", message: `${name} was left out: more than 1 GB of recordings is open.` };
    }
    const file = recordingFile(name, bytes);
    const replaced = before.files.find((each) => each.path === name);
    const session = withFile(before, file);
    this.#sessions.set(folder, session);
    const { outcome, message } = this.#lookAt(session, name);
    return replaced === undefined || replaced.sha256 === file.sha256
      ? { folder, outcome, message }
      : { folder, outcome, message: `${message} It took the place of another recording of the same name.` };
  }

  answer(folder: string, files: readonly string[], answers: RecordingAnswers): void {
    const session = this.#session(folder);
    for (const file of files) this.#requireFile(session, file);
    const all = session.files.map((each) => each.path);
    this.#change(session, withAnswers(session.stated.description, files, answers, all), answerWords(files));
  }

  changeSession(folder: string, change: SessionChange): void {
    const session = this.#session(folder);
    this.#change(session, withSessionChange(session.stated.description, change), sessionChangeWords(change));
  }

  changeTrial(folder: string, file: string, trial: number, change: TrialChange): void {
    const session = this.#session(folder);
    const trials = this.#trialsWith(session, file, trial);
    const eventsBefore = trials.find((each) => each.trial === trial)?.edits ?? [];
    if (change.eventsBefore !== undefined && !sameEvents(change.eventsBefore, eventsBefore)) {
      throw new RequestRefused("The events of this trial were moved elsewhere in the meantime; nothing was changed.");
    }
    const numbers = trials.map((each) => each.trial);
    const before = this.#analysisOf(session).result.criteria;
    this.#change(
      session,
      withTrialChange(session.stated.description, file, trial, change, numbers),
      trialChangeWords(file, trial, change, eventsBefore),
    );
    const decides = change.excluded !== undefined || change.events !== undefined;
    if (decides) this.#effect = statusChanges(before, this.analysis(folder).result.criteria);
  }

  /** States which foot stood on which plate in all trials of some files: one step, whatever their number. */
  statePlates(folder: string, files: readonly string[], feet: HostApi["trials.statePlates"]["request"]["feet"]): void {
    const session = this.#session(folder);
    const analysis = this.#analysisOf(session);
    const chosen = [...new Set(files)];
    const feetOfFiles = new Map(
      chosen.map((file) => {
        this.#requireFile(session, file);
        return [file, feet === "swap" ? swappedFeet(analysis, file) : feet] as const;
      }),
    );
    const trials = chosen.flatMap((file) => trialsOf(analysis, file)).length;
    const before = analysis.result.criteria;
    this.#change(session, withStatedPlates(session.stated.description, feetOfFiles), statedPlatesWords(feet, trials));
    this.#effect = statusChanges(before, this.analysis(folder).result.criteria);
  }

  /** Takes the last step back and shows the session it belongs to; nothing happens where there is none. */
  undo(): void {
    const step = this.#history.undo();
    if (step !== undefined) this.#state(step.folder, step.before);
  }

  redo(): void {
    const step = this.#history.redo();
    if (step !== undefined) this.#state(step.folder, step.after);
  }

  /** Remembers that a session's decisions were taken along as its session.json. */
  takenAlong(folder: string): void {
    this.#kept.set(folder, this.#session(folder).stated.description);
  }

  /** The analysis of one session, computed when it is not at hand. */
  analysis(folder: string): SessionAnalysis {
    return this.#analysisOf(this.#session(folder));
  }

  trace(folder: string, file: string, trial: number): TrialTrace {
    const session = this.#session(folder);
    this.#trialsWith(session, file, trial);
    const analysis = this.#analysisOf(session);
    if (analysis.recordings.get(file)?.recording === undefined) {
      throw new RequestRefused(`There is no force to draw in ${file}; its findings say why.`);
    }
    return traceTrial(analysis, file, trial, this.settings);
  }

  overlay({ folder, ...choice }: HostApi["sides.curves"]["request"]): CurveOverlay | undefined {
    return overlaySession(this.analysis(folder), choice);
  }

  #addDescription(session: StoredSession, bytes: Uint8Array): HostApi["recordings.add"]["reply"] {
    const { folder } = session;
    const { description, findings } = parseSessionFile(bytes);
    const after: Stated = { description, findings };
    this.#sessions.set(folder, { ...session, stated: after });
    this.#kept.set(folder, description);
    if (Object.keys(session.stated.description).length > 0) {
      const words = `Read ${joinPath(folder, sessionFileName)}`;
      this.#history.record({ folder, words, before: session.stated, after });
    } else this.#history.forgetUndone();
    const first = findings[0];
    const message = first === undefined ? "Describes the session." : `${first.message} ${first.action}`;
    return { folder, outcome: "session", message };
  }

  /** Looks at one file alone, which is quick; the session as a whole is analysed when it is read. */
  #lookAt(session: StoredSession, name: string): Pick<HostApi["recordings.add"]["reply"], "outcome" | "message"> {
    const file = session.files.find((each) => each.path === name);
    if (file === undefined) throw new Error(`The session has no file ${name}.`);
    const view = viewRecording(file, analyzeSession(sessionInput(session, [file]), this.settings));
    const refusal = view.findings.find((each) => each.severity === "refusal");
    const message =
      refusal === undefined
        ? `${view.trials} ${view.trials === 1 ? "trial" : "trials"}.`
        : `${refusal.message} ${refusal.action}`;
    return { outcome: view.outcome, message };
  }

  #change(session: StoredSession, description: Stated["description"], words: string): void {
    if (JSON.stringify(description) === JSON.stringify(session.stated.description)) return;
    const { folder, stated: before } = session;
    const after: Stated = { ...before, description };
    this.#effect = "";
    this.#history.record({ folder, words, before, after });
    this.#sessions.set(folder, { ...session, stated: after });
  }

  #state(folder: string, stated: Stated): void {
    const session = this.#session(folder);
    this.#effect = "";
    this.#sessions.set(folder, { ...session, stated });
    this.#shown = folder;
  }

  #session(folder: string): StoredSession {
    const session = this.#sessions.get(folder);
    if (session === undefined) throw new RequestRefused("That session is not open any more.");
    return session;
  }

  #requireFile(session: StoredSession, file: string): void {
    if (session.files.some((each) => each.path === file)) return;
    throw new RequestRefused(`${file} is not among the session's recordings.`);
  }

  /** All trials of the file, of which `trial` is known to be one. */
  #trialsWith(session: StoredSession, file: string, trial: number): readonly TrialResult[] {
    this.#requireFile(session, file);
    const trials = trialsOf(this.#analysisOf(session), file);
    if (trials.some((each) => each.trial === trial)) return trials;
    throw new RequestRefused(`${file} has no trial ${trial}.`);
  }

  #analysisOf(session: StoredSession): SessionAnalysis {
    const kept = this.#analyses.get(session);
    if (kept !== undefined) return kept;
    const made = analyzeSession(sessionInput(session), this.settings);
    this.#analyses.set(session, made);
    return made;
  }

  /** The demo world is there to be played with: its decisions are nobody's. */
  #isUnsaved(): boolean {
    if (this.#demo) return false;
    return [...this.#sessions.values()].some(
      ({ folder, stated }) => JSON.stringify(stated.description) !== JSON.stringify(this.#kept.get(folder) ?? {}),
    );
  }

  #byteLength(): number {
    let total = 0;
    for (const { files } of this.#sessions.values()) for (const { bytes } of files) total += bytes.byteLength;
    return total;
  }
}

function sameEvents(some: readonly EventEdit[], others: readonly EventEdit[]): boolean {
  const text = (edits: readonly EventEdit[]): string =>
    edits
      .map(({ name, contactIndex, time }) => `${name} ${contactIndex ?? ""} ${time}`)
      .sort()
      .join("\n");
  return text(some) === text(others);
}

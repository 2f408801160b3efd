import { existsSync } from "node:fs";
import { statusChanges } from "../../core/criteria/status-changes.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { overlaySession } from "../../core/session/overlay-session.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { traceTrial } from "../../core/session/trace-trial.ts";
import type { Settings } from "../../core/settings/settings.ts";
import type { CurveOverlay } from "../../core/sides/curves.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { english } from "../../core/words/english.ts";
import type { HostApi } from "../boundary/host-api.ts";
import type { FileLines, RecordingOutline, TakenFile } from "../boundary/recording-replies.ts";
import type { StepRequest } from "../boundary/session-requests.ts";
import type { AssignedRow, RecordingAnswers, SessionChange, TrialChange } from "../boundary/stated-changes.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { writtenCautions, writtenTime } from "../cautions/add-cautions.ts";
import type { CautionAddition } from "../cautions/caution-addition.ts";
import { otherKindOfFile } from "../files/left-aside/other-kind.ts";
import { type FoundSession, readFolder } from "../files/read-folder.ts";
import { sessionFileName, splitPath } from "../files/recording-names.ts";
import { copiesOf, type StoredSession } from "../files/stored-session.ts";
import { layoutOfFile } from "../layouts/layout-of-file.ts";
import type { LayoutShelf } from "../layouts/layout-shelf.ts";
import type { StartedFrom } from "../refusals/field-conflict.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { FileGuard } from "../threads/file-guard.ts";
import { Analyses } from "./analyses.ts";
import { editedDescription } from "./description-fields.ts";
import type { KeptStep, NumberedStep } from "./edit-history.ts";
import {
  answerWords,
  assignWords,
  keepOrExcludeWords,
  sessionChangeWords,
  statedPlatesWords,
  trialChangeWords,
} from "./edit-words.ts";
import { FileTexts } from "./file-lines.ts";
import type { HeldWorkspace } from "./held-workspace.ts";
import { chosenStep, offeredSteps } from "./offered-steps.ts";
import { OpenSessions } from "./open-sessions.ts";
import { type AnswerOnIntake, RecordingIntake } from "./recording-intake.ts";
import { outlineOf } from "./recording-outline.ts";
import { trialsOf, viewRecording } from "./recording-view.ts";
import { withAnswers, withAssignments, withSessionChange, withStatedPlates, withTrialChange } from "./session-edits.ts";
import type { SessionKeeper } from "./session-keeper.ts";
import { listSessions, sessionToBeginWith } from "./session-list.ts";
import { feetInOrder, swappedFeet } from "./swapped-feet.ts";

type Edit = (description: SessionDescription) => SessionDescription;
type Started = StartedFrom<SessionDescription>;

/**
 * Everything that is open, in memory: imported bytes, what was said about them, and the steps that can be taken back.
 * Results are computed when they are asked for and kept only while nothing they depend on has changed.
 */
export class WorkspaceState {
  readonly settings: Settings;
  readonly #sampleTraces: string;
  readonly #open = new OpenSessions();
  readonly #intake: RecordingIntake;
  readonly #shelf: LayoutShelf | undefined;
  readonly #analyses: Analyses;
  readonly #texts = new FileTexts();
  readonly #now: () => Date;
  #demo = false;
  /** How the thread that worked before this one ended, in words for the person; "" where there was none. */
  restarted = "";

  /**
   * @param sampleTraces folder of the demo world's recordings
   * @param shelf the saved layouts; without it none is applied and none can be kept
   * @param now the machine's clock, which says when cautions were written down
   */
  constructor(settings: Settings, sampleTraces: string, shelf?: LayoutShelf, now: () => Date = () => new Date()) {
    this.settings = settings;
    this.#sampleTraces = sampleTraces;
    this.#shelf = shelf;
    this.#now = now;
    this.#analyses = new Analyses(settings, shelf);
    this.#intake = new RecordingIntake(this.#open, this.#analyses);
  }

  /** Has the sessions that belong to the register kept there. */
  keepWith(keeper: SessionKeeper): void {
    this.#open.keepWith(keeper);
  }

  /** The state every screen draws from. */
  read(): Workspace {
    const session = this.#open.find(this.#open.shown);
    const analysis = session && this.#analyses.of(session);
    return {
      demo: this.#demo,
      sessions: listSessions(this.#open.all, writtenTime(this.#now()).slice(0, 10)),
      folder: this.#open.shown,
      ...(analysis && { session: analysis.result }),
      recordings:
        session && analysis
          ? session.files.map((file) => viewRecording(file, analysis, copiesOf(file, session.folder, this.#open.all)))
          : [],
      ...offeredSteps(this.#open.history, this.#open.shown),
      ...(this.#open.stepped !== "" && { stepped: this.#open.stepped }),
      effect: this.#open.effect,
      // The demo world is there to be played with: its decisions are nobody's.
      unsaved: !this.#demo && this.#open.isUnsaved,
      layouts: this.#analyses.layouts.map(({ name, shape, answers }) => ({ name, shape, answers })),
      unusableLayouts: (this.#shelf?.unusable ?? []).map(({ file, reason }) => `${file}: ${reason}`),
      ...(this.restarted !== "" && { restarted: this.restarted }),
      ...(session?.keptAs !== undefined && { keptAs: session.keptAs }),
      ...(this.#open.keeper && { register: this.#open.keeper.view() }),
    };
  }

  /** The code of the register's journal, where the register keeps this session. */
  journalCode(folder: string): string | undefined {
    return this.#open.find(folder)?.keptAs === undefined ? undefined : this.#open.keeper?.view().journalCode;
  }

  /** Opens the demo world, leaving what was open. */
  openDemo(): void {
    this.showDemo(
      this.demoWorld().map(({ folder, files, description, descriptionFindings }) => ({
        folder,
        files,
        stated: { description, findings: descriptionFindings },
      })),
    );
  }

  /** The demo world's recordings as they come with the program. */
  demoWorld(): readonly FoundSession[] {
    const found = existsSync(this.#sampleTraces) ? readFolder(this.#sampleTraces) : [];
    if (found.length === 0) throw new RequestRefused("The demo recordings are missing from this installation.");
    return found;
  }

  /** Shows sessions of the demo world, leaving what was open. */
  showDemo(sessions: readonly StoredSession[]): void {
    this.clear();
    for (const session of sessions) this.#open.put(session);
    this.#demo = true;
    this.#open.shown = sessionToBeginWith(sessions)?.folder ?? "";
  }

  /** Every session that is open. */
  get sessions(): readonly StoredSession[] {
    return this.#open.all;
  }

  /** Opens a session of the register beside what is open, and shows it. */
  openKept(session: StoredSession): void {
    this.#open.openKept(session);
  }

  /** Closes the sessions of the register; those in memory alone stay. */
  closeKept(): void {
    this.#open.closeKept();
    this.#demo = false;
  }

  /** Lists an action of the register among what can be taken back. */
  recordKept(step: KeptStep): void {
    this.#open.recordKept(step);
  }

  /** Steps of the register can no longer be taken back: it began anew. */
  forgetKept(): void {
    this.#open.history.forgetKept();
  }

  /** Reads sessions of the register again; one that is gone closes. */
  refreshKept(only?: string): void {
    this.#open.refreshKept(only);
  }

  /** From now on the guard stands over the work on each file. */
  guardWith(guard: FileGuard): void {
    this.#analyses.guardWith(guard);
  }

  /** What lives in memory alone and would be lost with it. */
  get held(): HeldWorkspace {
    return { ...this.#open.held, demo: this.#demo, batches: this.#intake.held };
  }

  /** Goes on with what another workspace held, in the place of what is open. */
  takeOver({ demo, batches, ...open }: HeldWorkspace): void {
    this.clear();
    this.#open.takeOver(open);
    this.#intake.takeOver(batches);
    this.#demo = demo;
  }

  /** Closes everything. */
  clear(): void {
    this.#open.clear();
    this.#analyses.clear();
    this.#intake.clear();
    this.#demo = false;
  }

  /** True when a session with this folder, or one below it, is open. */
  holdsWithin(folder: string): boolean {
    return this.#open.all.some(({ folder: each }) => each === folder || each.startsWith(`${folder}/`));
  }

  /** True when a session with this folder is open. */
  holds(folder: string): boolean {
    return this.#open.has(folder);
  }

  show(folder: string): void {
    this.#open.get(folder);
    this.#open.shown = folder;
  }

  /**
   * Takes one file in; the demo world gives way to a person's own recordings.
   * @param batch files of one batch never run into sessions that were open before; `endBatch` joins what belongs together
   */
  add(path: string, bytes: Uint8Array, batch = ""): TakenFile {
    this.#makeRoomFor(path, bytes);
    return this.#intake.add(path, bytes, batch);
  }

  /** Takes one file in with what `answer` states of it, at a cost that does not grow with the session. */
  takeIn(path: string, bytes: Uint8Array, answer: AnswerOnIntake): TakenFile {
    this.#makeRoomFor(path, bytes);
    return this.#intake.add(path, bytes, "", answer);
  }

  #makeRoomFor(path: string, bytes: Uint8Array): void {
    const { folder, name } = splitPath(path);
    const isOwn = this.#open.find(folder)?.keptAs === undefined;
    const comesIn = name === sessionFileName || otherKindOfFile(name, bytes) === undefined;
    if (this.#demo && isOwn && comesIn) this.clear();
  }

  /** Ends a batch: what came in under the name of an open session joins it where it is the same session. */
  endBatch(batch: string): HostApi["recordings.endBatch"]["reply"] {
    return this.#intake.endBatch(batch);
  }

  /** Takes recordings out of their session: one step, whatever their number. */
  takeOut(folder: string, files: readonly string[]): void {
    const session = this.#open.get(folder);
    for (const file of files) this.#requireFile(session, file);
    this.#open.takeOut(session, [...new Set(files)]);
  }

  answer(folder: string, files: readonly string[], answers: RecordingAnswers, started: Started = {}): void {
    const session = this.#open.get(folder);
    for (const file of files) this.#requireFile(session, file);
    const all = session.files.map((each) => each.path);
    const edit: Edit = (description) => withAnswers(description, files, answers, all);
    this.#open.change(session, editedDescription(session.stated.description, edit, started), answerWords(files));
  }

  /** States what some trials are: one step, whatever their number. */
  assign(folder: string, rows: readonly AssignedRow[], started: Started = {}): void {
    const session = this.#open.get(folder);
    const analysis = this.#analyses.of(session);
    for (const { file, trial } of rows) {
      if (trial === undefined) this.#requireFile(session, file);
      else this.#trialsWith(session, file, trial);
    }
    const all = session.files.map((each) => each.path);
    const numbers = (file: string) => trialsOf(analysis, file).map((each) => each.trial);
    const edit: Edit = (description) => withAssignments(description, rows, all, numbers);
    this.#open.change(session, editedDescription(session.stated.description, edit, started), assignWords(rows));
  }

  changeSession(folder: string, change: SessionChange, started: Started = {}): void {
    const session = this.#open.get(folder);
    const edit: Edit = (description) => withSessionChange(description, change);
    this.#open.change(
      session,
      editedDescription(session.stated.description, edit, started),
      sessionChangeWords(change),
    );
  }

  /** Adds to the cautions of a session; the machine's clock says when. */
  addCautions(folder: string, addition: CautionAddition): void {
    const session = this.#open.get(folder);
    this.#open.addCautions(session, writtenCautions(addition, session.stated.description.date, this.#now()));
  }

  changeTrial(folder: string, file: string, trial: number, change: TrialChange, started: Started = {}): void {
    const session = this.#open.get(folder);
    const trials = this.#trialsWith(session, file, trial);
    const eventsBefore = trials.find((each) => each.trial === trial)?.edits ?? [];
    const numbers = trials.map((each) => each.trial);
    const before = this.#analyses.of(session).result.criteria;
    const edit: Edit = (description) => withTrialChange(description, file, trial, change, numbers);
    this.#open.change(
      session,
      editedDescription(session.stated.description, edit, started),
      trialChangeWords(file, trial, change, eventsBefore),
      "trials changed",
    );
    const decides = change.excluded !== undefined || change.kept !== undefined || change.events !== undefined;
    if (decides)
      this.#open.effect = english.statuses.changes(statusChanges(before, this.analysis(folder).result.criteria));
  }

  /** Keeps or excludes several trials: one step, whatever their number. */
  keepOrExclude(
    folder: string,
    trials: HostApi["trials.keepOrExclude"]["request"]["trials"],
    decision: HostApi["trials.keepOrExclude"]["request"]["decision"],
  ): void {
    const session = this.#open.get(folder);
    const before = this.#analyses.of(session).result.criteria;
    let { description } = session.stated;
    for (const { file, trial } of trials) {
      const numbers = this.#trialsWith(session, file, trial).map((each) => each.trial);
      description = withTrialChange(description, file, trial, decision, numbers);
    }
    this.#open.change(session, description, keepOrExcludeWords(decision, trials.length), "trials changed");
    this.#open.effect = english.statuses.changes(statusChanges(before, this.analysis(folder).result.criteria));
  }

  /** States which foot stood on which plate in all trials of some files: one step, whatever their number. */
  statePlates(
    folder: string,
    files: readonly string[],
    feet: HostApi["trials.statePlates"]["request"]["feet"],
    started: Started = {},
  ): void {
    const session = this.#open.get(folder);
    const analysis = this.#analyses.of(session);
    const chosen = [...new Set(files)];
    const feetOfFiles = new Map(
      chosen.map((file) => {
        this.#requireFile(session, file);
        if (feet === "swap") return [file, swappedFeet(analysis, file)] as const;
        return [file, typeof feet === "string" ? feetInOrder(analysis, file, feet) : feet] as const;
      }),
    );
    const trials = chosen.flatMap((file) => trialsOf(analysis, file)).length;
    const before = analysis.result.criteria;
    const edit: Edit = (description) => withStatedPlates(description, feetOfFiles);
    this.#open.change(
      session,
      editedDescription(session.stated.description, edit, started),
      statedPlatesWords(feet, trials),
      "trials changed",
    );
    this.#open.effect = english.statuses.changes(statusChanges(before, this.analysis(folder).result.criteria));
  }

  /** Takes the step that is offered back, or the one that is named; nothing happens where there is none. */
  undo(request: StepRequest = {}): void {
    const step = chosenStep(this.#open.history, "undo", { folder: this.#open.shown, ...request });
    if (step !== undefined) this.#step(step, () => this.#open.undo(step));
  }

  redo(request: StepRequest = {}): void {
    const step = chosenStep(this.#open.history, "redo", { folder: this.#open.shown, ...request });
    if (step !== undefined) this.#step(step, () => this.#open.redo(step));
  }

  /** Does all of the work, in memory and in the register, or leaves everything as it was. */
  whole<Result>(work: () => Result): Result {
    const [demo, restoreBatches] = [this.#demo, this.#intake.snapshot()];
    try {
      return this.#open.whole(work);
    } catch (error) {
      this.#demo = demo;
      restoreBatches();
      throw error;
    }
  }

  /** Takes a step and says whether it changed a status of its session. */
  #step({ reach }: NumberedStep, take: () => void): void {
    const criteria = () =>
      "folder" in reach && this.#open.has(reach.folder) ? this.analysis(reach.folder).result.criteria : undefined;
    const before = criteria();
    take();
    const after = criteria();
    if (before !== undefined && after !== undefined)
      this.#open.effect = english.statuses.changes(statusChanges(before, after));
  }

  /** Remembers that a session's decisions were taken along as its session.json. */
  takenAlong(folder: string): void {
    this.#open.takenAlong(folder);
  }

  /** The analysis of one session, computed when it is not at hand. */
  analysis(folder: string): SessionAnalysis {
    return this.#analyses.of(this.#open.get(folder));
  }

  trace(folder: string, file: string, trial: number): TrialTrace {
    const session = this.#open.get(folder);
    this.#trialsWith(session, file, trial);
    const analysis = this.#analyses.of(session);
    if (analysis.recordings.get(file)?.recording === undefined) {
      throw new RequestRefused(`There is no force to draw in ${file}; its findings say why.`);
    }
    return traceTrial(analysis, file, trial, this.settings);
  }

  /** Lines of a file as they stand. */
  lines(folder: string, path: string, first: number, count: number): FileLines {
    const session = this.#open.get(folder);
    const file = this.#file(session, path);
    return this.#texts.linesOf(file, this.#analyses.of(session).recordings.get(path)?.reading, first, count);
  }

  /** The force of a whole file as it was understood; undefined where nothing was understood as force. */
  outline(folder: string, path: string): RecordingOutline | undefined {
    const session = this.#open.get(folder);
    this.#requireFile(session, path);
    return outlineOf(this.#analyses.of(session), path);
  }

  /** Remembers under a name what was answered for a file, for every file of its shape. */
  rememberLayout(folder: string, path: string, name: string): void {
    const session = this.#open.get(folder);
    this.#requireFile(session, path);
    const { reading } = this.#analyses.of(session).recordings.get(path) ?? {};
    const { description } = session.stated;
    this.layoutShelf.save(layoutOfFile(name, { path, reading, description }, this.#analyses.layouts));
  }

  /** Where saved layouts are kept. @throws RequestRefused where this start keeps none */
  get layoutShelf(): LayoutShelf {
    if (this.#shelf === undefined) throw new RequestRefused("Layouts cannot be kept here.");
    return this.#shelf;
  }

  overlay({ folder, ...choice }: HostApi["sides.curves"]["request"]): CurveOverlay | undefined {
    return overlaySession(this.analysis(folder), choice);
  }

  #requireFile(session: StoredSession, path: string): void {
    this.#file(session, path);
  }

  #file(session: StoredSession, path: string): RecordingFile {
    const file = session.files.find((each) => each.path === path);
    if (file === undefined) throw new RequestRefused(`${path} is not among the session's recordings.`);
    return file;
  }

  /** All trials of the file, of which `trial` is known to be one. */
  #trialsWith(session: StoredSession, file: string, trial: number): readonly TrialResult[] {
    this.#requireFile(session, file);
    const trials = trialsOf(this.#analyses.of(session), file);
    if (trials.some((each) => each.trial === trial)) return trials;
    throw new RequestRefused(`${file} has no trial ${trial}.`);
  }
}

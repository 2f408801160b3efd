import { statSync } from "node:fs";
import { basename, isAbsolute } from "node:path";
import { trialLoad } from "../../core/gate/test-load.ts";
import { withoutOptions } from "../../core/ground/plain-words.ts";
import { afterTrial } from "../../core/protocol/after-trial.ts";
import { askedAnswers } from "../../core/protocol/asked-answers.ts";
import { countsFor } from "../../core/protocol/counting.ts";
import { sessionCautions } from "../../core/protocol/session-cautions.ts";
import { sessionProgress } from "../../core/protocol/session-progress.ts";
import { leftAsideWords } from "../../core/recording/left-aside-words.ts";
import type { OtherKind } from "../../core/recording/other-kinds.ts";
import { tooLargeSentence } from "../../core/recording/size-limit.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { suggestLeavingOut } from "../../core/session/leave-out.ts";
import { english } from "../../core/words/english.ts";
import { findingInWords, tellFinding } from "../../core/words/finding-in-words.ts";
import type { NextRecordings } from "../boundary/stated-changes.ts";
import type { WatchedTrial, WatchView } from "../boundary/watch-view.ts";
import { joinPath, sessionFileName, splitPath } from "../files/recording-names.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { trialsOf } from "../workspace/recording-view.ts";
import type { WorkspaceState } from "../workspace/workspace.ts";
import { FolderWatch, type RecordingTaker, type WatchState, watchedFolder } from "./folder-watch.ts";
import type { HeldWatch } from "./held-watch.ts";
import type { SeenFile } from "./scan-folder.ts";
import { unsaidParts } from "./unsaid-parts.ts";
import { WaitingRecordings } from "./waiting-recordings.ts";

interface Newest {
  readonly session: string;
  readonly file: string;
  readonly problem: string;
}

/** What a watch asks of the register that is open, and tells it. */
export interface WatchSurroundings {
  /** Is told of exceptions, which are our own mistakes; the watch goes on. */
  report(error: unknown): void;
  /** Names the register's session that is being recorded now, where there is one: it takes the recordings in. */
  sessionUnderWay?(): string | undefined;
  /** While it is true nothing is taken in and nothing is named. */
  isLocked?(): boolean;
  /** Whether numbers are shown while it is locked. */
  showsCounts?(): boolean;
  /** Is told of each recording that came in. */
  cameIn?(): void;
}

/**
 * A watched folder during a session: each new recording goes into the workspace and is answered at once. While the
 * register is locked recordings wait, and go into the same session when it is unlocked.
 */
export class SessionWatch {
  readonly #workspace: WorkspaceState;
  readonly #surroundings: WatchSurroundings;
  /** The session each watched folder became: folders of one name in different places are different sessions. */
  readonly #names = new Map<string, string>();
  #watch: FolderWatch | undefined;
  #folder = "";
  /** The register's session that takes the recordings in. */
  #keptAs: string | undefined;
  #next: NextRecordings = {};
  #newest: Newest | undefined;
  #taken = 0;
  #leftAside = new Map<string, OtherKind>();
  #tooLarge = new Set<string>();
  #waiting = new WaitingRecordings();
  #revision = 0;

  constructor(workspace: WorkspaceState, surroundings: WatchSurroundings) {
    this.#workspace = workspace;
    this.#surroundings = surroundings;
  }

  /**
   * Starts watching; what lies in the folder already is taken in too. Ends a watch that was on.
   * @throws RequestRefused when there is no such folder
   */
  start(folder: string): void {
    if (!isAbsolute(folder)) throw new RequestRefused("Give the folder with its whole path, from the disk on.");
    if (!(statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false)) {
      throw new RequestRefused(`There is no folder ${folder}.`);
    }
    this.stop();
    this.#folder = folder;
    const underWay = this.#surroundings.sessionUnderWay?.();
    const wasKept = this.#keptAsOf(this.#name) !== undefined;
    if (wasKept || !this.#workspace.holdsWithin(this.#name)) this.#names.delete(folder);
    this.#names.set(folder, underWay ?? this.#names.get(folder) ?? this.#freeName(basename(folder)));
    this.#begin({ folder, next: {}, taken: 0, files: [] });
  }

  /** Goes on with a watch that another thread held. */
  goOn(held: HeldWatch): void {
    this.stop();
    this.#folder = held.folder;
    this.#keptAs = held.keptAs;
    if (held.session !== undefined) this.#names.set(held.folder, held.session);
    this.#begin(held);
    this.#settleName();
  }

  /** What another thread needs to go on with this watch; undefined while it is off. */
  get held(): HeldWatch | undefined {
    if (this.#watch === undefined) return undefined;
    const isDone = ({ path }: SeenFile) =>
      !this.#waiting.has(path) && !this.#leftAside.has(path) && !this.#tooLarge.has(path);
    const keptAs = this.#keptAsNow;
    return {
      folder: this.#folder,
      next: this.#next,
      taken: this.#taken,
      files: this.#watch.taken.filter(isDone),
      ...(keptAs === undefined ? { session: this.#name } : { keptAs }),
    };
  }

  #begin({ folder, next, taken, files }: HeldWatch): void {
    this.#next = next;
    this.#newest = undefined;
    this.#taken = taken;
    this.#leftAside.clear();
    this.#tooLarge.clear();
    const taker: RecordingTaker = {
      take: (path, bytes) => this.#take(path, bytes),
      hasRoomFor: (byteLength) => !this.#mustWait || this.#waiting.hasRoomFor(byteLength),
      tellTooLarge: (path) => {
        this.#tooLarge.add(path);
        this.#revision += 1;
      },
    };
    this.#watch = new FolderWatch(watchedFolder(folder), taker, files);
    this.#watch.start();
    this.#revision += 1;
  }

  /** Stops watching; what was taken in stays, and so does what waits, in its folder. */
  stop(): void {
    this.#watch?.stop();
    this.#watch = undefined;
    this.#folder = "";
    this.#keptAs = undefined;
    this.#waiting = new WaitingRecordings();
    this.#revision += 1;
  }

  /** The register is about to be locked: what the watch needs to know of it afterwards is remembered. */
  beforeLocking(): void {
    this.#keptAs = this.#keptAsNow;
    this.#newest = undefined;
    this.#revision += 1;
  }

  /** The register was unlocked: what waited is taken in, one recording after another while requests are answered. */
  async unlocked(): Promise<void> {
    this.#settleName();
    this.#revision += 1;
    const waiting = this.#waiting;
    while (!this.#isLocked && this.#waiting === waiting) {
      const first = waiting.next();
      if (first === undefined) return;
      this.#takeSafely(first.path, first.bytes);
      await new Promise((resolve) => setImmediate(resolve));
    }
  }

  /** What the next recordings are, as the tester says; what stands in their names or files outranks it. */
  expect(next: NextRecordings): void {
    this.#next = next;
    this.#revision += 1;
  }

  read(): WatchView {
    const state = this.#watch?.state;
    const word = state === undefined ? "off" : state.reachable ? "watching" : "unreachable";
    if (this.#isLocked) return this.#lockedView(word, state);
    return {
      state: word,
      folder: this.#folder,
      revision: this.#revision,
      writing: state?.writing ?? [],
      taken: this.#taken,
      notTaken: this.#notTaken(),
      next: this.#next,
      ...(this.#newest !== undefined && this.#newestView(this.#newest)),
      ...(state !== undefined && this.#cautionsView()),
    };
  }

  /** Names nothing: everybody in the room reads it. */
  #lockedView(word: WatchView["state"], state: WatchState | undefined): WatchView {
    const nothing = { folder: "", writing: [], taken: 0, notTaken: [], next: {} };
    const view = { state: word, revision: this.#revision, ...nothing };
    if (state === undefined || !(this.#surroundings.showsCounts?.() ?? false)) return view;
    const counts = {
      taken: this.#taken,
      waiting: this.#waiting.count + state.left,
      writing: state.writing.length,
      leftAside: this.#leftAside.size + this.#tooLarge.size,
    };
    return { ...view, counts };
  }

  get #isLocked(): boolean {
    return this.#surroundings.isLocked?.() ?? false;
  }

  /** What came in before and still waits is taken first, so that the newest version of a file is the last one. */
  get #mustWait(): boolean {
    return this.#isLocked || this.#waiting.count > 0;
  }

  get #keptAsNow(): string | undefined {
    return this.#keptAsOf(this.#name) ?? this.#keptAs;
  }

  #keptAsOf(name: string): string | undefined {
    return this.#workspace.sessions.find((each) => each.folder === name)?.keptAs;
  }

  /** After unlocking the session may stand under another name, or be gone: then the recordings become one of their own. */
  #settleName(): void {
    if (this.#watch === undefined || this.#isLocked) return;
    if (this.#keptAs !== undefined) {
      const open = this.#workspace.sessions.find(({ keptAs }) => keptAs === this.#keptAs);
      this.#names.set(this.#folder, open?.folder ?? this.#freeName(basename(this.#folder)));
      this.#keptAs = open?.keptAs;
    } else if (this.#name === "") this.#names.set(this.#folder, this.#freeName(basename(this.#folder)));
  }

  #notTaken(): readonly string[] {
    const leftAside = leftAsideWords([...this.#leftAside].map(([path, kind]) => ({ path, kind })));
    return [...(leftAside === "" ? [] : [leftAside]), ...[...this.#tooLarge].map(tooLargeSentence)];
  }

  get #name(): string {
    return this.#names.get(this.#folder) ?? "";
  }

  /** The name, or the first of "name (2)", "name (3)", … that no open session has. */
  #freeName(name: string): string {
    for (let number = 1; ; number += 1) {
      const free = number === 1 ? name : `${name} (${number})`;
      if (!this.#workspace.holdsWithin(free)) return free;
    }
  }

  #take(path: string, bytes: Uint8Array): void {
    if (this.#mustWait) {
      this.#waiting.add({ path, bytes });
      this.#revision += 1;
    } else this.#takeSafely(path, bytes);
  }

  #takeSafely(path: string, bytes: Uint8Array): void {
    try {
      this.#takeIn(path, bytes);
    } catch (error) {
      this.#surroundings.report(error);
      const { folder: session, name: file } = splitPath(joinPath(this.#name, path));
      const problem = "Something went wrong inside the program with this recording; the file itself is unharmed.";
      this.#newest = { session, file, problem };
    }
  }

  #takeIn(path: string, bytes: Uint8Array): void {
    const place = joinPath(this.#name, path);
    const { folder: session, name: file } = splitPath(place);
    const isFirst = !this.#workspace.holds(session);
    const { outcome, message, kind } = this.#workspace.takeIn(place, bytes, (alone, whole) =>
      unsaidParts(this.#next, file, alone, whole),
    );
    this.#revision += 1;
    this.#tooLarge.delete(path);
    this.#leftAside.delete(path);
    if (kind !== undefined) {
      this.#leftAside.set(path, kind);
      return;
    }
    if (isFirst && this.#workspace.holds(session)) this.#workspace.show(session);
    this.#surroundings.cameIn?.();
    if (file === sessionFileName) return;
    this.#taken += 1;
    this.#newest = { session, file, problem: outcome === "refused" ? message : "" };
  }

  #newestView(newest: Newest): Pick<WatchView, "newest" | "questions" | "anotherAthlete" | "progress"> {
    const { session, file, problem } = newest;
    if (!this.#workspace.holds(session)) return { newest: { session, file, problem, trials: [] } };
    const analysis = this.#workspace.analysis(session);
    const trials = trialsOf(analysis, file).map((trial) => watchedTrial(trial, analysis.result));
    const asked = analysis.result.findings.find(({ code }) => code === "another-athlete");
    return {
      ...(asked !== undefined && { anotherAthlete: tellFinding(asked, english) }),
      newest: { session, file, problem: trials.length > 0 ? "" : problem, trials },
      questions: askedAnswers(analysis.result),
      ...progressView(analysis.result),
    };
  }

  /** Of the newest recording's session, or of the one under way before there is any. */
  #cautionsView(): Pick<WatchView, "cautions"> {
    const session = this.#newest?.session ?? this.#name;
    if (!this.#workspace.holds(session)) return {};
    const { result } = this.#workspace.analysis(session);
    const { test, limb } = this.#next;
    const due = sessionCautions(result, trialLoad({ ...(test && { test }), ...(limb && { limb }) }));
    const closed = !result.gate.open && result.gate.closures.some(({ openedBy }) => openedBy !== "answer");
    return { cautions: { session, due: due.filter(({ isDue }) => isDue).map(({ asking }) => asking), closed } };
  }
}

function progressView(session: SessionResult): Pick<WatchView, "progress"> {
  const progress = sessionProgress(session);
  if (progress === undefined) return {};
  const { missing: _missing, ...shown } = progress;
  return { progress: shown };
}

function watchedTrial(trial: TrialResult, session: SessionResult): WatchedTrial {
  const { counts, reason, waitsFor } = countsFor(trial, session.trials);
  const { test, limb, recognised } = trial;
  const bearer = trialBearer(trial);
  const { protocol } = session.description;
  const said = trial.findings.find((each) => findingInWords(each, english).message === reason);
  return {
    trial: trial.trial,
    ...(test !== undefined && { test }),
    ...(limb !== undefined && { limb }),
    practice: trial.practice === true,
    ...(bearer?.plate !== undefined && { plate: bearer.plate }),
    counts,
    waits: waitsFor.length > 0,
    reason,
    action: said === undefined ? "" : withoutOptions(findingInWords(said, english).action),
    leaveOut: suggestLeavingOut(trial.findings),
    next: protocol === undefined ? "" : afterTrial(protocol, trial, session),
    measures: trial.measures.filter(({ side, plate }) => side === bearer?.side && plate === bearer?.plate),
    ...(test === undefined &&
      recognised !== undefined && {
        looksLike: { test: recognised.test, reason: english.recognition(recognised) },
      }),
  };
}

import { analyzeSession } from "../../core/analyze.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import type { Settings } from "../../core/settings/settings.ts";
import type { Layout } from "../../core/stated/layout.ts";
import { type StoredSession, sessionInput } from "../files/stored-session.ts";
import type { LayoutShelf } from "../layouts/layout-shelf.ts";
import { type FileGuard, putAsideReason } from "../threads/file-guard.ts";
import { KeptSteps } from "./kept-steps.ts";

const noLayouts: readonly Layout[] = [];

/** Analyses of sessions, made when they are asked for and kept while nothing they depend on has changed. */
export class Analyses {
  readonly #settings: Settings;
  readonly #shelf: LayoutShelf | undefined;
  readonly #steps = new KeptSteps();
  readonly #kept = new WeakMap<
    StoredSession,
    { readonly layouts: readonly Layout[]; readonly made: SessionAnalysis }
  >();

  constructor(settings: Settings, shelf: LayoutShelf | undefined) {
    this.#settings = settings;
    this.#shelf = shelf;
  }

  /** From now on the guard stands over the work on each file. */
  guardWith(guard: FileGuard): void {
    this.#steps.guard = guard;
  }

  get guard(): FileGuard {
    return this.#steps.guard;
  }

  /** The saved layouts that answer for files of their shape. */
  get layouts(): readonly Layout[] {
    return this.#shelf?.layouts ?? noLayouts;
  }

  /** The analysis of a whole session. */
  of(session: StoredSession): SessionAnalysis {
    const kept = this.#kept.get(session);
    if (kept !== undefined && kept.layouts === this.layouts) return kept.made;
    const made = this.#analyze(session, session.files);
    this.#kept.set(session, { layouts: this.layouts, made });
    return made;
  }

  /** The analysis of one file alone, which is quick; what it was cut into is kept for the whole. */
  ofFile(session: StoredSession, file: RecordingFile): SessionAnalysis {
    const { description } = session.stated;
    const files = description.files?.filter((entry) => entry.file === file.path);
    const stated = { ...session.stated, description: { ...description, ...(files && { files }) } };
    return this.#analyze({ ...session, stated }, [file]);
  }

  /** Forgets what the files gave. */
  clear(): void {
    this.#steps.clear();
  }

  #analyze(session: StoredSession, files: readonly RecordingFile[]): SessionAnalysis {
    const unreadable = files
      .filter((file) => this.guard.isPutAside(file))
      .map(({ path }) => ({ path, reason: putAsideReason }));
    const opened = unreadable.length === 0 ? files : files.filter((file) => !this.guard.isPutAside(file));
    return analyzeSession({ ...sessionInput(session, this.layouts, opened), unreadable }, this.#settings, this.#steps);
  }
}

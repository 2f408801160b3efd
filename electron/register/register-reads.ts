import type { FoundSession } from "../files/read-folder.ts";
import { comparePaths } from "../files/recording-names.ts";
import { recordingFile } from "../files/stored-session.ts";
import type { AthleteIndex } from "./athlete-index.ts";
import type { Journal } from "./journal.ts";
import type { RecordKind } from "./record-schemas.ts";
import type { RecordStore } from "./record-store.ts";
import { recordKinds, type StoredRecord } from "./record-tables.ts";
import type { AthleteFilter, AthleteLine, AthletePage, JournalLine, SessionRecords } from "./register-views.ts";
import { actorOf } from "./register-writes.ts";
import { type DescribedSession, descriptionOf, readingFindingsOf } from "./session-conversion.ts";

/** So many of the newest entries of the journal say whose names are offered, and so many names are. */
const entriesAskedForNames = 500;
const mostNames = 12;

/** Everything that can be asked of an unlocked register. Nothing here changes anything. */
export class RegisterReads {
  readonly #store: RecordStore;
  readonly #journal: Journal;
  readonly #index: AthleteIndex;

  constructor(store: RecordStore, journal: Journal, index: AthleteIndex) {
    this.#store = store;
    this.#journal = journal;
    this.#index = index;
  }

  /** The athletes that fit, by code. */
  athletes(filter: AthleteFilter = {}): readonly AthleteLine[] {
    return this.#index.list(filter);
  }

  /** Undefined where there is no such athlete outside the bin. */
  athletePage(id: string): AthletePage | undefined {
    const athlete = this.#store.read("athletes", id);
    if (athlete === undefined || athlete.binned) return undefined;
    const by = <Kind extends RecordKind>(kind: Kind) => this.#store.readBy(kind, "athlete", id);
    const undated = "9999";
    return {
      athlete,
      injuries: by("injuries"),
      operations: by("operations"),
      sessions: by("sessions")
        .toSorted((a, b) => comparePaths(a.content.date ?? undated, b.content.date ?? undated))
        .map((session) => this.#sessionRecords(session)),
      enteredFindings: by("enteredFindings"),
      consents: by("consents"),
      decisions: by("decisions"),
    };
  }

  /** One record, wherever it is. */
  record<Kind extends RecordKind>(kind: Kind, id: string): StoredRecord<Kind> | undefined {
    return this.#store.read(kind, id);
  }

  /** Every record of a kind outside the bin. */
  records<Kind extends RecordKind>(kind: Kind): readonly StoredRecord<Kind>[] {
    return [...this.#store.readAll(kind)].filter((each) => !each.binned);
  }

  /** A session with what hangs on it and whose it is; undefined where there is no such session. */
  describedSession(id: string): DescribedSession | undefined {
    const session = this.#store.read("sessions", id);
    if (session === undefined || session.binned) return undefined;
    const owner = session.references.athlete;
    const athlete = owner === undefined ? undefined : this.#store.read("athletes", owner);
    const of = <Kind extends "injuries" | "operations">(kind: Kind) =>
      owner === undefined ? [] : this.#store.readBy(kind, "athlete", owner).map(({ content }) => content);
    const operations = of("operations");
    return {
      ...this.#sessionRecords(session),
      ...(athlete && { athlete }),
      injuriesAndOperations: [...of("injuries"), ...operations],
      operations,
    };
  }

  /**
   * A session as the analysis takes it: the bytes as they were imported and what was said of them, exactly what
   * reading its folder would give.
   */
  sessionInput(id: string): FoundSession | undefined {
    const described = this.describedSession(id);
    if (described === undefined) return undefined;
    const files = described.recordings
      .map((recording) => recordingFile(recording.content.path, this.#store.readBytes(recording)))
      .toSorted((first, second) => comparePaths(first.path, second.path));
    return {
      folder: described.session.content.folder,
      files,
      unreadable: [],
      description: descriptionOf(described),
      descriptionFindings: readingFindingsOf(described.session),
    };
  }

  /** The bytes of one recording exactly as they were imported. */
  recordingBytes(recording: StoredRecord<"recordings">): Uint8Array {
    return this.#store.readBytes(recording);
  }

  /** What lies in the bin. */
  bin(): readonly StoredRecord[] {
    return recordKinds.flatMap((kind) => [...this.#store.readAll(kind)].filter((each) => each.binned));
  }

  /** The newest entries of the journal, newest first. */
  journal(most: number): readonly JournalLine[] {
    return this.#journal.readNewest(most).flatMap(({ sequence, at, title }) => {
      return title === undefined ? [] : [{ sequence, at, action: title.action, ...actorOf(title) }];
    });
  }

  /** Names of people who acted lately, the latest first. */
  lateActors(): readonly string[] {
    const titles = this.#journal.readNewest(entriesAskedForNames).map(({ title }) => title?.by);
    return [...new Set(titles.filter((by) => by !== undefined))].slice(0, mostNames);
  }

  #sessionRecords(session: StoredRecord<"sessions">): SessionRecords {
    const recordings = this.#store.readBy("recordings", "session", session.id);
    return { session, recordings, trials: this.#store.readTrials(session.id) };
  }
}

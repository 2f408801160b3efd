import { RequestRefused } from "../refusals/request-refused.ts";
import type { AthleteIndex } from "./athlete-index.ts";
import { ChangeSet, stateOf } from "./change-set.ts";
import type { Journal, JournalChange, JournalTitle } from "./journal.ts";
import type { JournalAction } from "./journal-actions.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { RecordStore } from "./record-store.ts";
import type { RecordKey, RecordState, StoredRecord } from "./record-tables.ts";
import { acrossStep } from "./step-back.ts";
import { withAdded } from "./with-added.ts";

/** Who is at the machine, and what time it is. */
export interface Circumstances {
  /** The user's name in the operating system. */
  readonly who: string;
  /** The name of the person at the machine, as they gave it; it may change while the register is open. */
  readonly by?: string | undefined;
  readonly now: () => Date;
}

/** Who acts now, for the title of an entry of the journal. */
export function actorOf({ who, by }: Pick<Circumstances, "who" | "by">): Pick<JournalTitle, "who" | "by"> {
  return { who, ...(by !== undefined && { by }) };
}

/** Where a copy went, how it was found, and what was answered or read of a knee, stays true whatever is undone. */
const staysForGood: ReadonlySet<JournalAction> = new Set<JournalAction>([
  "copy made elsewhere",
  "copy checked",
  "cautions added",
]);

/** Everything that changes the records of an unlocked register. One action of a person is one transaction. */
export class RegisterWrites {
  readonly #store: RecordStore;
  readonly #journal: Journal;
  readonly #index: AthleteIndex;
  readonly #circumstances: Circumstances;
  /** Entries of the journal that can be undone, and done again: of this sitting alone. */
  readonly #done: number[] = [];
  readonly #undone: number[] = [];

  constructor(store: RecordStore, journal: Journal, index: AthleteIndex, circumstances: Circumstances) {
    this.#store = store;
    this.#journal = journal;
    this.#index = index;
    this.#circumstances = circumstances;
  }

  /** Does all of an action, journals it, or leaves everything as it was. An action that changes nothing leaves no entry. */
  act<Result>(action: JournalAction, work: (changes: ChangeSet) => Result): Result {
    let sequence: number | undefined;
    let lines: ChangedLines = new Map();
    const result = this.#store.connection.action(() => {
      const changes = new ChangeSet(this.#store);
      const made = work(changes);
      if (changes.changes.length > 0) {
        sequence = this.#append(action, changes.changes);
        lines = this.#index.keep(athletesIn(changes.changes));
      }
      return made;
    });
    if (sequence !== undefined) {
      if (!staysForGood.has(action)) {
        this.#done.push(sequence);
        this.#undone.length = 0;
      }
      this.#index.show(lines);
    }
    return result;
  }

  /** How many actions can be undone. */
  get steps(): number {
    return this.#done.length;
  }

  /** The journal's entries of the actions that were done since there were so many. */
  stepsSince(count: number): readonly number[] {
    return this.#done.slice(count);
  }

  /** Keeps everything that the work does, as several actions or one, or nothing of it where it throws. */
  whole<Result>(work: () => Result): Result {
    const [done, undone] = [[...this.#done], [...this.#undone]];
    const restoreIndex = this.#index.snapshot();
    try {
      return this.#store.connection.whole(work);
    } catch (error) {
      this.#done.splice(0, this.#done.length, ...done);
      this.#undone.splice(0, this.#undone.length, ...undone);
      restoreIndex();
      throw error;
    }
  }

  moveToBin(...records: readonly RecordKey[]): void {
    this.act("moved to the bin", (changes) => {
      for (const each of records) changes.moveToBin(each);
    });
  }

  takeOutOfBin(...records: readonly RecordKey[]): void {
    this.act("taken out of the bin", (changes) => {
      for (const each of records) changes.takeOutOfBin(each);
    });
  }

  /** What undoing would take back; undefined where there is nothing. */
  get undoAction(): JournalAction | undefined {
    return actionAt(this.#journal, this.#done);
  }

  /** What would be done again; undefined where there is nothing. */
  get redoAction(): JournalAction | undefined {
    return actionAt(this.#journal, this.#undone);
  }

  /**
   * Takes an action back by an entry of its own, the last one where none is named; what was added goes to the bin. What
   * was changed since in other fields stays.
   * @throws RequestRefused where the same fields were changed since
   */
  undo(sequence?: number): void {
    this.#step(this.#done, this.#undone, "undone", sequence);
  }

  /** Does an action again that was taken back; where none is named, the last one if nothing was done since. */
  redo(sequence?: number): void {
    this.#step(this.#undone, this.#done, "done again", sequence);
  }

  #step(from: number[], to: number[], action: JournalAction, named: number | undefined): void {
    const sequence = named ?? from.at(-1);
    if (sequence === undefined) {
      throw new RequestRefused(action === "undone" ? "There is nothing to undo." : "There is nothing to do again.");
    }
    const original = this.#journal.readChanges(sequence);
    if (original === undefined) throw new RequestRefused("This step was erased since and cannot be brought back.");
    const lines = this.#store.connection.action(() => {
      const changes = new ChangeSet(this.#store);
      const isUndone = action === "undone";
      for (const each of isUndone ? original.toReversed() : original) {
        // What a step added lies in the bin while it is taken back.
        const without = each.before ?? { ...each.after, binned: true };
        const [here, there] = isUndone ? [each.after, without] : [without, each.after];
        const now = this.#existing(each);
        changes.write(each, acrossStep(stateOf(now), keepingAdded(now, here), keepingAdded(now, there)));
      }
      this.#append(action, changes.changes, sequence);
      return this.#index.keep(athletesIn(changes.changes));
    });
    if (from.includes(sequence)) from.splice(from.indexOf(sequence), 1);
    to.push(sequence);
    this.#index.show(lines);
  }

  #existing({ kind, id }: RecordKey): StoredRecord {
    const record = this.#store.read(kind, id);
    if (record === undefined) throw new RequestRefused("This is no longer in the register; nothing was changed.");
    return record;
  }

  #append(action: JournalAction, changes: readonly JournalChange[], of?: number): number {
    const now = this.#circumstances.now();
    return this.#journal.append(
      now,
      { action, ...actorOf(this.#circumstances), ...(of !== undefined && { of }) },
      changes,
    );
  }
}

/** A state of a session, with every answer, reading and opening that it has now. */
function keepingAdded(now: StoredRecord, state: RecordState): RecordState {
  if (now.kind !== "sessions") return state;
  // Both states are those of a session's record.
  const [added, content] = [now.content, state.content] as RecordContent<"sessions">[];
  return added === undefined || content === undefined ? state : { ...state, content: withAdded(added, content) };
}

type ChangedLines = ReturnType<AthleteIndex["keep"]>;

/** Whose line in the list may say something else now. */
function athletesIn(changes: readonly JournalChange[]): ReadonlySet<string> {
  const athletes = new Set<string>();
  for (const { kind, id, before, after } of changes) {
    if (kind === "athletes") athletes.add(id);
    for (const state of [before, after]) if (state?.references.athlete) athletes.add(state.references.athlete);
  }
  return athletes;
}

function actionAt(journal: Journal, steps: readonly number[]): JournalAction | undefined {
  const sequence = steps.at(-1);
  return sequence === undefined ? undefined : journal.readTitle(sequence)?.action;
}

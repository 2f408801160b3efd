import type { InvolvedSide } from "../../core/ground/limb.ts";
import { involvedSideAt } from "../../core/sides/involvement.ts";
import { comparePaths } from "../files/recording-names.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { AthleteLines } from "./athlete-lines.ts";
import type { RecordKind } from "./record-schemas.ts";
import type { RecordStore } from "./record-store.ts";
import type { StoredRecord } from "./record-tables.ts";
import type { AthleteFilter, AthleteLine } from "./register-views.ts";

/** The list of athletes in memory, so that searching needs no file and works on encrypted names. */
export class AthleteIndex {
  readonly #store: RecordStore;
  readonly #lines: AthleteLines;
  readonly #shown = new Map<string, IndexedAthlete>();
  #isKept: boolean;

  /** Rows that could not be read while the list was made. */
  readonly damagedRows: number = 0;
  /** The lines in the file were in step with the journal and yet not what was written. */
  readonly hadDamagedLines: boolean = false;

  /**
   * Takes the lines that lie in the file; where there are none that fit, reads every record once. A damaged row does
   * not keep the others from being shown.
   */
  constructor(store: RecordStore, lines: AthleteLines, isWritable: boolean) {
    this.#store = store;
    this.#lines = lines;
    const wereInStep = lines.inStep;
    const kept = wereInStep ? lines.readAll() : undefined;
    this.hadDamagedLines = wereInStep && kept === undefined;
    this.#isKept = kept !== undefined && areOfEveryAthlete(kept, store);
    if (kept !== undefined && this.#isKept) {
      for (const line of kept) this.#show(line);
      return;
    }
    const made = athleteLinesOf(store);
    this.damagedRows = made.damagedRows;
    for (const line of made.lines) this.#show(line);
    // Lines that lack something are not kept: the next opening is to tell of the damage again.
    if (isWritable && made.damagedRows === 0) this.#isKept = keepWherePossible(lines, made.lines);
  }

  /** Makes the lines of some athletes anew within the transaction of a change; `show` them when it is done. */
  keep(athletes: ReadonlySet<string>): ReadonlyMap<string, AthleteLine | undefined> {
    const changed = new Map([...athletes].map((id) => [id, athleteLineOf(this.#store, id)] as const));
    if (this.#isKept) this.#lines.replaceSome(changed);
    return changed;
  }

  show(changed: ReadonlyMap<string, AthleteLine | undefined>): void {
    for (const [id, line] of changed) {
      if (line === undefined) this.#shown.delete(id);
      else this.#show(line);
    }
  }

  /** The list as it is now, to come back to. @returns brings it back */
  snapshot(): () => void {
    const shown = [...this.#shown];
    return () => {
      this.#shown.clear();
      for (const [id, line] of shown) this.#shown.set(id, line);
    };
  }

  /** The athletes that fit, by code. */
  list(filter: AthleteFilter = {}): readonly AthleteLine[] {
    const words = foldText(filter.text ?? "")
      .split(" ")
      .filter((word) => word !== "");
    return [...this.#shown.values()]
      .filter((each) => words.every((word) => each.text.includes(word)) && fits(each.line, filter))
      .map(({ line }) => line)
      .toSorted((first, second) => comparePaths(first.code, second.code) || comparePaths(first.id, second.id));
  }

  #show(line: AthleteLine): void {
    this.#shown.set(line.id, { line, text: foldText(`${line.code} ${line.name ?? ""}`) });
  }
}

/** Every athlete's own row can be read, and has a line unless it lies in the bin. */
function areOfEveryAthlete(lines: readonly AthleteLine[], store: RecordStore): boolean {
  const shown = new Set(lines.map(({ id }) => id));
  let isSound = true;
  let athletes = 0;
  const tellDamaged = () => {
    isSound = false;
  };
  for (const { id, binned } of store.readSound("athletes", tellDamaged)) {
    if (binned) continue;
    athletes += 1;
    if (!shown.has(id)) return false;
  }
  return isSound && athletes === lines.length;
}

/** A full disk keeps nobody from reading: the list is there, and is made again at the next opening. */
function keepWherePossible(lines: AthleteLines, made: readonly AthleteLine[]): boolean {
  try {
    lines.replaceAll(made);
    return true;
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    return false;
  }
}

type InjuryOrOperation = StoredRecord<"injuries" | "operations">;

/** The line of every athlete outside the bin, from all records. */
export function athleteLinesOf(store: RecordStore) {
  let damagedRows = 0;
  const readAll = <Kind extends RecordKind>(kind: Kind) =>
    store.readSound(kind, () => {
      damagedRows += 1;
    });
  const operations = [...readAll("operations")];
  const injured = byAthlete([...readAll("injuries"), ...operations]);
  const operated = byAthlete(operations);
  const sessions = new Map<string, AthleteSessions>();
  for (const session of readAll("sessions")) {
    const athlete = session.references.athlete;
    if (athlete === undefined || session.binned) continue;
    sessions.set(athlete, withSession(sessions.get(athlete), session));
  }
  const lines: AthleteLine[] = [];
  for (const athlete of readAll("athletes")) {
    const { id, binned } = athlete;
    if (!binned) lines.push(lineOf(athlete, injured.get(id) ?? [], operated.get(id) ?? [], sessions.get(id)));
  }
  return { lines, damagedRows };
}

/** The line of one athlete; undefined in the bin. */
function athleteLineOf(store: RecordStore, id: string): AthleteLine | undefined {
  const athlete = store.read("athletes", id);
  if (athlete === undefined || athlete.binned) return undefined;
  const operations = store.readSoundBy("operations", "athlete", id);
  const injured = [...store.readSoundBy("injuries", "athlete", id), ...operations];
  const sessions = store
    .readSoundBy("sessions", "athlete", id)
    .reduce<AthleteSessions | undefined>((before, session) => withSession(before, session), undefined);
  return lineOf(athlete, injured, operations, sessions);
}

function lineOf(
  { id, content }: StoredRecord<"athletes">,
  injured: readonly InjuryOrOperation[],
  operations: readonly InjuryOrOperation[],
  sessions: AthleteSessions | undefined,
): AthleteLine {
  const operated = operations
    .flatMap((each) => each.content.date ?? [])
    .toSorted(comparePaths)
    .at(-1);
  const recorded = injured.map((each) => each.content);
  const involved = involvedSideAt(recorded, undefined, content.nobodyInjured !== undefined) ?? sessions?.involved;
  return {
    id,
    code: content.code,
    ...(content.name !== undefined && { name: content.name }),
    ...(involved !== undefined && { involved }),
    ...(operated !== undefined && { operated }),
    sessions: sessions?.count ?? 0,
    ...(sessions && { lastSession: sessions.last }),
  };
}

interface IndexedAthlete {
  readonly line: AthleteLine;
  readonly text: string;
}

interface AthleteSessions {
  readonly count: number;
  readonly last: NonNullable<AthleteLine["lastSession"]>;
  /** As the last session that says so states it. */
  readonly involved?: InvolvedSide;
  readonly involvedDate: string;
}

/** Letters that decomposing leaves whole, as people type them on another keyboard. */
const plainLetters: Readonly<Record<string, string>> = { ø: "o", æ: "ae", œ: "oe", ł: "l", đ: "d", ß: "ss", þ: "th" };

/** Lower case, without accents, for searching. */
export function foldText(text: string): string {
  return text
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{Diacritic}/gu, "")
    .replace(/[øæœłđßþ]/g, (letter) => plainLetters[letter] ?? letter);
}

function withSession(before: AthleteSessions | undefined, { id, content }: StoredRecord<"sessions">): AthleteSessions {
  const isLatest = before === undefined || (content.date ?? "") >= (before.last.date ?? "");
  const last = {
    id,
    ...(content.date !== undefined && { date: content.date }),
    ...(content.milestone !== undefined && { milestone: content.milestone }),
  };
  const statesLater = content.involved !== undefined && (content.date ?? "") >= (before?.involvedDate ?? "");
  const involved = statesLater ? content.involved : before?.involved;
  return {
    count: (before?.count ?? 0) + 1,
    last: isLatest ? last : before.last,
    ...(involved !== undefined && { involved }),
    involvedDate: statesLater ? (content.date ?? "") : (before?.involvedDate ?? ""),
  };
}

function byAthlete(records: readonly InjuryOrOperation[]): ReadonlyMap<string, readonly InjuryOrOperation[]> {
  const grouped = new Map<string, InjuryOrOperation[]>();
  for (const record of records) {
    const athlete = record.references.athlete;
    if (record.binned || athlete === undefined) continue;
    const group = grouped.get(athlete);
    if (group === undefined) grouped.set(athlete, [record]);
    else group.push(record);
  }
  return grouped;
}

function fits({ involved, operated, lastSession }: AthleteLine, filter: AthleteFilter): boolean {
  const within = (date: string | undefined, from: string | undefined, to: string | undefined) =>
    (from === undefined && to === undefined) ||
    (date !== undefined && (from === undefined || date >= from) && (to === undefined || date <= to));
  return (
    (filter.involved === undefined || filter.involved === involved) &&
    within(operated, filter.operatedFrom, filter.operatedTo) &&
    within(lastSession?.date, filter.lastSessionFrom, filter.lastSessionTo) &&
    (filter.milestone === undefined || foldText(lastSession?.milestone ?? "").includes(foldText(filter.milestone)))
  );
}

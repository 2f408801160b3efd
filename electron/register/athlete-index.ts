import type { InvolvedSide } from "../../core/limb.ts";
import { comparePaths } from "../recording-names.ts";
import { involvedSideAt } from "./involved-side.ts";
import type { RecordKind } from "./record-schemas.ts";
import type { RecordStore } from "./record-store.ts";
import type { StoredRecord } from "./record-tables.ts";
import type { AthleteFilter, AthleteLine } from "./register-views.ts";

/** The list of athletes in memory, so that searching needs no file and works on encrypted names. */
export class AthleteIndex {
  readonly #store: RecordStore;
  readonly #lines = new Map<string, IndexedAthlete>();

  /** Rows that could not be read while the list was made. */
  readonly damagedRows: number;

  /** Reads every athlete once. A damaged row does not keep the others from being shown. */
  constructor(store: RecordStore) {
    this.#store = store;
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
    for (const athlete of readAll("athletes")) {
      const { id } = athlete;
      this.#put(athlete, injured.get(id) ?? [], operated.get(id) ?? [], sessions.get(id));
    }
    this.damagedRows = damagedRows;
  }

  /** Reads one athlete again after a change. */
  refresh(id: string): void {
    const athlete = this.#store.read("athletes", id);
    this.#lines.delete(id);
    if (athlete === undefined) return;
    const operations = this.#store.readBy("operations", "athlete", id);
    const injured = [...this.#store.readBy("injuries", "athlete", id), ...operations];
    const sessions = this.#store
      .readBy("sessions", "athlete", id)
      .reduce<AthleteSessions | undefined>((before, session) => withSession(before, session), undefined);
    this.#put(athlete, injured, operations, sessions);
  }

  /** The athletes that fit, by code. */
  list(filter: AthleteFilter = {}): readonly AthleteLine[] {
    const words = foldText(filter.text ?? "")
      .split(" ")
      .filter((word) => word !== "");
    return [...this.#lines.values()]
      .filter((each) => words.every((word) => each.text.includes(word)) && fits(each.line, filter))
      .map(({ line }) => line)
      .toSorted((first, second) => comparePaths(first.code, second.code) || comparePaths(first.id, second.id));
  }

  #put(
    { id, binned, content }: StoredRecord<"athletes">,
    injured: readonly InjuryOrOperation[],
    operations: readonly InjuryOrOperation[],
    sessions: AthleteSessions | undefined,
  ): void {
    if (binned) return;
    const operated = operations
      .map((each) => each.content.date)
      .toSorted(comparePaths)
      .at(-1);
    const line: AthleteLine = {
      id,
      code: content.code,
      ...(content.name !== undefined && { name: content.name }),
      involved:
        injured.length > 0
          ? involvedSideAt(
              injured.map((each) => each.content),
              undefined,
            )
          : (sessions?.involved ?? "none"),
      ...(operated !== undefined && { operated }),
      sessions: sessions?.count ?? 0,
      ...(sessions && { lastSession: sessions.last }),
    };
    this.#lines.set(id, { line, text: foldText(`${content.code} ${content.name ?? ""}`) });
  }
}

type InjuryOrOperation = StoredRecord<"injuries" | "operations">;

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

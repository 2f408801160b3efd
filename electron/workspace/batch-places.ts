import type { StoredSession } from "../files/stored-session.ts";

/** Where a batch puts its folders: under their own name, or under a free one beside a session of that name. */
export class BatchPlaces {
  readonly #places: Map<string, string>;

  constructor(places: Iterable<readonly [folder: string, place: string]> = []) {
    this.#places = new Map(places);
  }

  copy(): BatchPlaces {
    return new BatchPlaces(this.#places);
  }

  /** The session that a folder of the batch goes to; a name that was open before the batch is not touched yet. */
  placeOf(folder: string, isTaken: (folder: string) => boolean): string {
    const known = this.#places.get(folder);
    if (known !== undefined) return known;
    const place = isTaken(folder) ? freeName(folder, isTaken) : folder;
    this.#places.set(folder, place);
    return place;
  }

  /** From now on the folder's files go to this session. */
  settle(folder: string, place: string): void {
    this.#places.set(folder, place);
  }

  /** Each folder of the batch with the session it went to. */
  get all(): readonly (readonly [folder: string, place: string])[] {
    return [...this.#places];
  }
}

/** The open sessions that recordings of a folder may belong to: those of its name, with or without a number. */
export function namesakes(folder: string, sessions: Iterable<StoredSession>): readonly StoredSession[] {
  return [...sessions].filter((session) => session.folder === folder || numberOf(session.folder, folder) >= 2);
}

/** "month-7 (2)", or the first number that is free. */
function freeName(folder: string, isTaken: (folder: string) => boolean): string {
  const stem = stemOf(folder);
  for (let number = 2; ; number += 1) {
    const name = `${stem} (${number})`;
    if (!isTaken(name)) return name;
  }
}

function numberOf(name: string, folder: string): number {
  const stem = stemOf(folder);
  const rest = name.startsWith(`${stem} (`) ? name.slice(stem.length) : "";
  return Number(/^ \((\d+)\)$/.exec(rest)?.[1] ?? 0);
}

/** Files that lie in no folder have a session of their own. */
function stemOf(folder: string): string {
  return folder === "" ? "Loose recordings" : folder;
}

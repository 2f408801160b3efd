import type { SeenFile } from "./scan-folder.ts";

/** What one look at the folder found. */
export interface LookOutcome {
  /** New or changed since they were taken, and the same at two looks in a row: complete. */
  readonly complete: readonly SeenFile[];
  /** Still being written. */
  readonly writing: readonly string[];
}

/**
 * Tells complete files from those still being written: a file counts as complete when size and time of change are the
 * same at two looks in a row and it is not empty. One that changes after it was taken is taken again.
 */
export class CompletedFiles {
  #before = new Map<string, SeenFile>();
  readonly #taken = new Map<string, SeenFile>();

  /** @param taken what was taken in before, each file as it was seen then */
  constructor(taken: readonly SeenFile[] = []) {
    for (const file of taken) this.taken(file);
  }

  /** Compares a look with the one before it. */
  look(seen: readonly SeenFile[]): LookOutcome {
    const fresh = seen.filter((file) => !isSameVersion(this.#taken.get(file.path), file));
    const steady = (file: SeenFile): boolean => file.size > 0 && isSameVersion(this.#before.get(file.path), file);
    const complete = fresh.filter(steady);
    const writing = fresh.filter((file) => !steady(file)).map((file) => file.path);
    this.#before = new Map(seen.map((file) => [file.path, file]));
    return { complete, writing };
  }

  /** Remembers that a file was taken in as it was seen. */
  taken(file: SeenFile): void {
    this.#taken.set(file.path, file);
  }

  /** Every file that was taken in, as it was seen then. */
  get allTaken(): readonly SeenFile[] {
    return [...this.#taken.values()];
  }
}

function isSameVersion(one: SeenFile | undefined, other: SeenFile): boolean {
  return one !== undefined && one.size === other.size && one.changedAt === other.changedAt;
}

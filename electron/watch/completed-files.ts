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
  readonly #taken = new Map<string, string>();

  /** Compares a look with the one before it. */
  look(seen: readonly SeenFile[]): LookOutcome {
    const fresh = seen.filter((file) => this.#taken.get(file.path) !== versionOf(file));
    const steady = (file: SeenFile): boolean => {
      const before = this.#before.get(file.path);
      return file.size > 0 && before !== undefined && versionOf(before) === versionOf(file);
    };
    const complete = fresh.filter(steady);
    const writing = fresh.filter((file) => !steady(file)).map((file) => file.path);
    this.#before = new Map(seen.map((file) => [file.path, file]));
    return { complete, writing };
  }

  /** Remembers that a file was taken in as it was seen. */
  taken(file: SeenFile): void {
    this.#taken.set(file.path, versionOf(file));
  }
}

function versionOf({ size, changedAt }: SeenFile): string {
  return `${size} ${changedAt}`;
}

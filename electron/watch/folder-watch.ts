import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";
import { sessionFileName, splitPath } from "../files/recording-names.ts";
import { sharedCopy } from "../threads/shared-copy.ts";
import { CompletedFiles } from "./completed-files.ts";
import { type SeenFile, scanFolder } from "./scan-folder.ts";

/** How the watched folder stands. */
export interface WatchState {
  readonly reachable: boolean;
  /** Files that are still being written, relative to the folder. */
  readonly writing: readonly string[];
  /** Complete files that are left in the folder until there is room for them. */
  readonly left: number;
}

/** What a watch needs of the world; the file system unless a test stands in for it. */
export interface WatchedFolder {
  readonly scan: () => Promise<readonly SeenFile[]>;
  readonly read: (path: string) => Promise<Uint8Array>;
}

/** What is told of the files of a watched folder. */
export interface RecordingTaker {
  /** Is given each complete file once, and once more whenever it has changed since. */
  take(path: string, bytes: Uint8Array): void;
  /** Is told of each complete file that is larger than one recording may be; it is not read. */
  tellTooLarge?(path: string): void;
  /** False: a complete file of so many bytes is left in its folder until a later look. */
  hasRoomFor?(byteLength: number): boolean;
}

/** Milliseconds from the end of one look to the next; two looks alike make a file complete. */
const pauseMilliseconds = 300;

/** A folder that is slow to list is listed less often: at most this share of the time. */
const mostLookingShare = 0.25;

/** The folder at a path of this machine, or of a share that is reached like one. */
export function watchedFolder(root: string): WatchedFolder {
  return {
    scan: () => scanFolder(root),
    read: async (path) => sharedCopy(await readFile(join(root, path))),
  };
}

/**
 * Looks at a folder again and again, because shares on a network tell nobody of changes, and hands over each file that
 * is complete. A folder that cannot be reached is looked for until it is back.
 */
export class FolderWatch {
  readonly #folder: WatchedFolder;
  readonly #taker: RecordingTaker;
  readonly #files: CompletedFiles;
  #state: WatchState = { reachable: true, writing: [], left: 0 };
  #timer: NodeJS.Timeout | undefined;
  #ended = false;

  /** @param taken files that were taken in before, each as it was seen then */
  constructor(folder: WatchedFolder, taker: RecordingTaker, taken: readonly SeenFile[] = []) {
    this.#folder = folder;
    this.#taker = taker;
    this.#files = new CompletedFiles(taken);
  }

  /** Every file that was handed over, as it was seen then. */
  get taken(): readonly SeenFile[] {
    return this.#files.allTaken;
  }

  get state(): WatchState {
    return this.#state;
  }

  /** Starts looking; ends with `stop`. */
  start(): void {
    const run = async (): Promise<void> => {
      const started = performance.now();
      await this.look();
      const looked = performance.now() - started;
      const pause = Math.max(pauseMilliseconds, looked * (1 / mostLookingShare - 1));
      if (!this.#ended) this.#timer = setTimeout(() => void run(), pause);
    };
    void run();
  }

  stop(): void {
    this.#ended = true;
    clearTimeout(this.#timer);
  }

  /** One look: files that were complete at the last look too are read and handed over. */
  async look(): Promise<void> {
    let seen: readonly SeenFile[];
    try {
      seen = await this.#folder.scan();
    } catch {
      this.#state = { reachable: false, writing: [], left: 0 };
      return;
    }
    const { complete, writing } = this.#files.look(seen);
    const unread: string[] = [];
    let left = 0;
    for (const file of descriptionsFirst(complete)) {
      if (file.size > recordingByteLimit) {
        this.#files.taken(file);
        this.#taker.tellTooLarge?.(file.path);
        continue;
      }
      if (this.#taker.hasRoomFor?.(file.size) === false) {
        left += 1;
        continue;
      }
      // Still locked by the program that writes it, or gone since the look: tried again at the next.
      const bytes = await this.#folder.read(file.path).catch(() => undefined);
      if (this.#ended) return;
      if (bytes === undefined || bytes.byteLength !== file.size) {
        unread.push(file.path);
        continue;
      }
      this.#files.taken(file);
      this.#taker.take(file.path, bytes);
    }
    this.#state = { reachable: true, writing: [...writing, ...unread], left };
  }
}

/** A session.json that comes with recordings is taken before them, so that they are answered with what is known. */
function descriptionsFirst(files: readonly SeenFile[]): readonly SeenFile[] {
  const describes = ({ path }: SeenFile): boolean => splitPath(path).name === sessionFileName;
  return [...files.filter(describes), ...files.filter((file) => !describes(file))];
}

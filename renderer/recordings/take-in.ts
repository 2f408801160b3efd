import type { OtherKind } from "../../core/recording/other-kinds.ts";
import type { Host } from "../../electron/boundary/host-api.ts";
import type { TakenFile } from "../../electron/boundary/recording-replies.ts";
import { sentenceOf } from "../shell/host.ts";
import { words } from "../words/words.ts";
import { FileTooLarge, type PickedFile } from "./dropped-files.ts";

const prose = words.screens.recordingsIntake;

/** How far a batch has come. */
export interface TakingIn {
  readonly done: number;
  readonly total: number;
  /** From the files so far; absent before the first is done. */
  readonly secondsLeft?: number;
}

/** What became of one file of a batch; "not read" where the batch was cancelled before it. */
export interface BatchFile {
  readonly picked: PickedFile;
  /** The session it went to; absent where it went nowhere. */
  readonly folder?: string;
  readonly outcome: TakenFile["outcome"] | "not read";
  /** What it is, where it was left aside. */
  readonly kind?: OtherKind;
  readonly message: string;
}

/** What became of a batch. */
export interface TakenIn {
  readonly batch: string;
  readonly cancelled: boolean;
  /** Every file of the batch, in the order it was handed in. */
  readonly files: readonly BatchFile[];
  /** Where folders went whose name was open already, a sentence each. */
  readonly places: readonly string[];
}

export interface TakeInOptions {
  /** Names the batch; the same name again brings files to the sessions they went to before. */
  readonly batch: string;
  readonly onProgress: (progress: TakingIn) => void;
  readonly isCancelled: () => boolean;
  /** Milliseconds of a clock that only goes forward. */
  readonly now: () => number;
}

/** Hands files to the host one by one. A file that cannot be read or is refused never costs the rest of the batch. */
export async function takeIn(host: Host, picked: readonly PickedFile[], options: TakeInOptions): Promise<TakenIn> {
  const { batch, onProgress, isCancelled, now } = options;
  const started = now();
  const files: BatchFile[] = [];
  const total = picked.length;
  onProgress({ done: 0, total });
  for (const each of picked) {
    if (isCancelled()) break;
    files.push(await takeOne(host, each, batch));
    const done = files.length;
    onProgress({ done, total, secondsLeft: ((now() - started) / 1000 / done) * (total - done) });
  }
  const { places } = await host.call("recordings.endBatch", { batch });
  const placed = new Map(places.map(({ folder, session }) => [folder, session]));
  return {
    batch,
    cancelled: files.length < total,
    files: [
      ...files.map((file) => {
        const session = placed.get(folderOf(file.picked.path));
        return file.folder === undefined || session === undefined ? file : { ...file, folder: session };
      }),
      ...picked.slice(files.length).map(notRead),
    ],
    places: places.flatMap(({ message }) => (message === "" ? [] : [message])),
  };
}

/**
 * Hands one file over; whatever is wrong with it becomes its message.
 * @param batch "" where it goes straight into the session its path names
 */
export async function takeOne(host: Host, picked: PickedFile, batch: string): Promise<BatchFile> {
  try {
    const bytes = await picked.read().catch((reason: unknown) => {
      if (reason instanceof FileTooLarge) throw reason;
      throw new Error(prose.fileNotRead);
    });
    const { path } = picked;
    const taken = await host.call("recordings.add", { path, bytes, ...(batch !== "" && { batch }) });
    const { folder, outcome, message, kind } = taken;
    if (outcome === "left aside") return { picked, outcome, message, ...(kind !== undefined && { kind }) };
    return { picked, folder, outcome, message };
  } catch (reason) {
    return { picked, outcome: "refused", message: sentenceOf(reason) };
  }
}

function notRead(picked: PickedFile): BatchFile {
  return { picked, outcome: "not read", message: prose.cancelledBefore };
}

function folderOf(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf("/")));
}

/** The batch with what became of some of its files when they were tried again. */
export function withRetried(before: TakenIn, again: TakenIn): TakenIn {
  const news = new Map(again.files.map((file) => [file.picked.path, file]));
  const files = before.files.map((file) => news.get(file.picked.path) ?? file);
  return {
    batch: before.batch,
    cancelled: files.some((file) => file.outcome === "not read"),
    files,
    places: [...new Set([...before.places, ...again.places])],
  };
}

/** "3 of 24, about 12 s left". */
export function progressWords({ done, total, secondsLeft }: TakingIn): string {
  const left = secondsLeft === undefined || done === total ? "" : prose.aboutLeft(durationWords(secondsLeft));
  return prose.doneOf(done, total, left);
}

function durationWords(seconds: number): string {
  const whole = Math.max(1, Math.ceil(seconds));
  return whole < 90 ? prose.seconds(whole) : prose.minutes(Math.ceil(whole / 60));
}

import type { Host } from "../../electron/host-api.ts";
import { sentenceOf } from "../host.ts";
import type { PickedFile } from "./dropped-files.ts";

/** How far a batch has come. */
export interface TakingIn {
  readonly done: number;
  readonly total: number;
  /** From the files so far; absent before the first is done. */
  readonly secondsLeft?: number;
}

/** What became of a batch. */
export interface TakenIn {
  readonly done: number;
  readonly total: number;
  readonly cancelled: boolean;
  /** The session of the first file taken in; absent when none was. */
  readonly folder?: string;
  /** Files that were left out, each with its sentence. */
  readonly leftOut: readonly { readonly path: string; readonly message: string }[];
}

export interface TakeInOptions {
  readonly onProgress: (progress: TakingIn) => void;
  readonly isCancelled: () => boolean;
  /** Milliseconds of a clock that only goes forward. */
  readonly now: () => number;
}

/** Hands files to the host one by one. A file that cannot be read or is refused never costs the rest of the batch. */
export async function takeIn(host: Host, files: readonly PickedFile[], options: TakeInOptions): Promise<TakenIn> {
  const { onProgress, isCancelled, now } = options;
  const started = now();
  const leftOut: { path: string; message: string }[] = [];
  let folder: string | undefined;
  let done = 0;
  onProgress({ done, total: files.length });
  for (const { path, read } of files) {
    if (isCancelled()) break;
    try {
      const bytes = await read().catch(() => {
        throw new Error("The file could not be read. See whether it still exists and may be opened.");
      });
      const reply = await host.call("recordings.add", { path, bytes });
      if (reply.outcome === "refused") leftOut.push({ path, message: reply.message });
      folder ??= reply.folder;
    } catch (reason) {
      leftOut.push({ path, message: sentenceOf(reason) });
    }
    done += 1;
    const secondsLeft = ((now() - started) / 1000 / done) * (files.length - done);
    onProgress({ done, total: files.length, secondsLeft });
  }
  return {
    done,
    total: files.length,
    cancelled: done < files.length,
    ...(folder === undefined ? {} : { folder }),
    leftOut,
  };
}

/** "3 of 24, about 12 s left". */
export function progressWords({ done, total, secondsLeft }: TakingIn): string {
  const left = secondsLeft === undefined || done === total ? "" : `, about ${durationWords(secondsLeft)} left`;
  return `${done} of ${total}${left}`;
}

function durationWords(seconds: number): string {
  const whole = Math.max(1, Math.ceil(seconds));
  return whole < 90 ? `${whole} s` : `${Math.ceil(whole / 60)} min`;
}

import { z } from "zod";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";
import type { MadeFile } from "./made-file.ts";
import type { BatchPlace, FileLines, RecordingOutline, TakenFile } from "./recording-replies.ts";
import { nothing, request } from "./request.ts";
import { bytesUpTo, file, files, folder, line, place, relativePath, started } from "./request-parts.ts";
import { assignedRowSchema, nextRecordingsSchema, recordingAnswersSchema } from "./stated-changes.ts";
import type { WatchView } from "./watch-view.ts";
import type { Workspace } from "./workspace-view.ts";

/** Most lines of a file given at a time. */
const lineLimit = 1000;

const layoutName = line(200).min(1);
/** Names the batch a file came in with. */
const batch = line(64).min(1);

/** How recordings come in, what they are and how they are read. */
export const recordingRequests = {
  /**
   * Takes one file in. `path` is relative with forward slashes; its folder is its session; a file called session.json
   * describes its folder. Answers shortly; the screen reads the workspace when a batch is done. Folders of a batch never
   * run into those of other batches.
   */
  "recordings.add": request(
    z.strictObject({
      path: relativePath,
      bytes: bytesUpTo(recordingByteLimit, "64 MB"),
      batch: batch.exactOptional(),
    }),
  ).replies<TakenFile>(),
  /**
   * Ends a batch: a folder whose name was open before joins that session where it is the same one, and stays beside it
   * where it is another. Says where each such folder is now.
   */
  "recordings.endBatch": request(z.strictObject({ batch })).replies<{ readonly places: readonly BatchPlace[] }>(),
  /** Takes recordings out of their session, as one step that can be taken back; in the register they lie in the bin. */
  "recordings.takeOut": request(z.strictObject({ folder, files })).replies<Workspace>(),
  /** Lines of a file as text, at most `lineLimit` of them. */
  "recordings.lines": request(
    z.strictObject({
      folder,
      file,
      first: z.int().min(1).max(1_000_000_000),
      count: z.int().min(1).max(lineLimit),
    }),
  ).replies<FileLines>(),
  /** Without an outline where nothing was understood as force. */
  "recordings.outline": request(z.strictObject({ folder, file })).replies<{ readonly outline?: RecordingOutline }>(),
  /** States what some trials are, as one step that can be taken back. */
  "recordings.assign": request(
    z.strictObject({ folder, rows: z.array(assignedRowSchema).min(1).max(10_000), ...started }),
  ).replies<Workspace>(),
  "recordings.answer": request(
    z.strictObject({ folder, files, answers: recordingAnswersSchema, ...started }),
  ).replies<Workspace>(),
  /** Remembers what was answered for a file, for every file of its shape. */
  "layouts.remember": request(z.strictObject({ folder, file, name: layoutName })).replies<Workspace>(),
  "layouts.rename": request(z.strictObject({ name: layoutName, to: layoutName })).replies<Workspace>(),
  "layouts.remove": request(z.strictObject({ name: layoutName })).replies<Workspace>(),
  /** Takes in a layout that was exported as JSON. */
  "layouts.import": request(z.strictObject({ bytes: bytesUpTo(1024 * 1024, "1 MB") })).replies<Workspace>(),
  "layouts.export": request(z.strictObject({ name: layoutName })).replies<MadeFile>(),
  /** Lets the person choose a folder in the system's own dialog; no folder where it was left, or in a browser. */
  "watch.choose": request(nothing).replies<{ readonly folder?: string }>(),
  /** Watches a folder of this computer, given with its whole path, and takes in what appears there. */
  "watch.start": request(z.strictObject({ folder: place })).replies<WatchView>(),
  "watch.stop": request(nothing).replies<WatchView>(),
  "watch.read": request(nothing).replies<WatchView>(),
  /** What the next recordings are, as the tester says; an empty one takes it back. */
  "watch.expect": request(z.strictObject({ next: nextRecordingsSchema })).replies<WatchView>(),
};

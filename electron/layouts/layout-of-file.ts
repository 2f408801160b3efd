import type { FileReading } from "../../core/recording/file-reading.ts";
import { entriesOfFile } from "../../core/stated/entries-by-file.ts";
import type { Layout } from "../../core/stated/layout.ts";
import { rememberedAnswers } from "../../core/stated/remembered-answers.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";

/** What can be learnt from one file. */
export interface AnsweredFile {
  readonly path: string;
  readonly reading: FileReading | undefined;
  readonly description: SessionDescription;
}

/**
 * What was answered for a file, as a layout for every file of its shape.
 * @param layouts the saved ones; what the one that was applied says stays, where nothing newer was stated
 * @throws RequestRefused for a file that has no layout, or about which nothing of the kind was stated
 */
export function layoutOfFile(
  name: string,
  { path, reading, description }: AnsweredFile,
  layouts: readonly Layout[],
): Layout {
  if (reading?.kind !== "delimited") throw new RequestRefused(`${path} is no delimited text; it has no layout.`);
  const entries = entriesOfFile(description, path);
  const before = layouts.find((each) => each.name === reading.layout);
  const answers = rememberedAnswers(Object.assign({}, ...entries), before?.answers);
  if (answers === undefined) {
    throw new RequestRefused(`Nothing was stated about ${path} that other files of its shape would need.`);
  }
  return { schemaVersion: 1, name, shape: reading.shape, answers };
}

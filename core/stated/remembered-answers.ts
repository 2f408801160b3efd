import type { RememberedAnswers } from "../recording/reading-statements.ts";
import type { FileEntry } from "./file-entry.ts";
import { readingAnswers } from "./reading-answers.ts";

/**
 * What of the statements about a file is true of every file of its shape: columns, rate, unit, marks and plates, never
 * the test or the limb. What a saved layout answered for the file already stays, where nothing newer was stated.
 * @returns undefined where there is nothing to remember
 */
export function rememberedAnswers(
  entry: Partial<FileEntry>,
  before: RememberedAnswers | undefined,
): RememberedAnswers | undefined {
  const { columns } = entry;
  const statesForces = [columns?.left, columns?.right, columns?.total].some((key) => key !== undefined);
  const { left, right, total, platesStated, ...rest } = before ?? {};
  const forcesBefore = {
    ...(left === undefined ? {} : { left }),
    ...(right === undefined ? {} : { right }),
    ...(total === undefined ? {} : { total }),
    ...(platesStated === undefined ? {} : { platesStated }),
  };
  const answers: RememberedAnswers = {
    ...rest,
    ...(statesForces ? {} : forcesBefore),
    ...readingAnswers(entry),
  };
  return Object.keys(answers).length === 0 ? undefined : answers;
}

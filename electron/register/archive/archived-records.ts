import { listElements } from "../../bounded-json/list-elements.ts";
import { BeyondLimits, readJson } from "../../bounded-json/read-json.ts";
import { RequestRefused } from "../../refusals/request-refused.ts";
import { wordsOf } from "../change-set.ts";
import type { RecordKind } from "../record-schemas.ts";
import { type ArchivedRecord, recordSchema, recordsName } from "./archive-format.ts";
import { recordLimits } from "./archive-limits.ts";

/**
 * The records of one kind in their document, one after another.
 * @throws RequestRefused at the first that is not understood
 */
export function* archivedRecords(kind: RecordKind, document: Uint8Array): Generator<ArchivedRecord> {
  const schema = recordSchema(kind);
  let index = 0;
  const elements = listElements(document);
  while (true) {
    const element = reading(kind, () => elements.next());
    if (element.done) return;
    const read = schema.safeParse(reading(kind, () => readJson(element.value, recordLimits)));
    if (!read.success) {
      const [issue] = read.error.issues;
      throw new RequestRefused(
        `The ${wordsOf(kind)} in the archive are not understood at ${[index, ...(issue?.path ?? [])].join(".")}; nothing of it was used.`,
      );
    }
    // The schema of the kind has just passed; references are identifiers by the names of its columns.
    yield read.data as ArchivedRecord;
    index += 1;
  }
}

function reading<Result>(kind: RecordKind, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof BeyondLimits || error instanceof SyntaxError)) throw error;
    const why = error instanceof BeyondLimits ? `was not read: a record ${error.message}` : "is no JSON";
    throw new RequestRefused(`${recordsName(kind)} in the archive ${why}; nothing of it was used.`);
  }
}

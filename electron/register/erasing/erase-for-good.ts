import { RequestRefused } from "../../refusals/request-refused.ts";
import { eraseRecords, withDependents } from "../erase-records.ts";
import { contentKeyIds, hasContentKeys } from "../keys/content-keys.ts";
import type { RecordKey } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { readFact, writeFact } from "../register-facts.ts";
import { keptBackups } from "../register-folder.ts";
import type { ErasureCertificate, ErasurePreview } from "../register-views.ts";
import { reached } from "../steps.ts";
import { certificateOf } from "./certificate.ts";
import { cleanUp } from "./clean-up.ts";
import { valuesOf } from "./searched-values.ts";

export interface ErasureOptions {
  /** Erases what is not in the bin as well; otherwise that is refused. */
  readonly alsoOutsideBin?: boolean;
  /** The folder of the person's data, which is searched too. */
  readonly dataFolder?: string;
}

/** What erasing these records would remove, and which copies it cannot reach. */
export function previewErasure(register: Register, roots: readonly RecordKey[]): ErasurePreview {
  const keys = withDependents(register.contents.store, roots);
  const count = (kind: string) => keys.filter((each) => each.kind === kind).length;
  const [athletes, sessions, recordings] = [count("athletes"), count("sessions"), count("recordings")];
  return {
    athletes,
    sessions,
    recordings,
    others: keys.length - athletes - sessions - recordings,
    backups: keptBackups(register.file).length,
    copiesElsewhere: copiesElsewhere(register),
  };
}

/**
 * Removes records for good: from the register, from the journal's contents and from every backup the register keeps,
 * and searches what is left. Where the records cannot be removed, all is as it was; where something after that cannot
 * be done, the certificate says what remains, and `finishErasure` and every opening try again.
 * @throws RequestRefused when the records are not in the bin, or nothing could be written
 */
export function eraseForGood(
  register: Register,
  roots: readonly RecordKey[],
  options: ErasureOptions = {},
): ErasureCertificate {
  register.requireWritable();
  const { store, journal } = register.contents;
  for (const { kind, id } of roots) {
    const isBinned = store.read(kind, id)?.binned;
    if (isBinned === true || (isBinned === false && options.alsoOutsideBin === true)) continue;
    throw new RequestRefused("Only what lies in the bin can be erased; nothing was changed.");
  }
  const { copiesElsewhere: copies, backups: _count, ...erased } = previewErasure(register, roots);
  const keys = withDependents(store, roots);
  const values = valuesOf(register, keys);
  const keyDestroyed = contentKeyIds(store.connection, athletesAmong(keys)).length > 0;
  store.connection.action(() => {
    // An earlier one that is not finished yet is finished with this one.
    const earlier = readFact(store.connection, "unfinishedErasure")?.records ?? [];
    eraseRecords(store, journal, roots, register.circumstances);
    // Everything by its own name: a backup may know a session as another athlete's.
    writeFact(store.connection, "unfinishedErasure", { records: [...earlier, ...keys] });
  });
  reached("erased from the register");
  // Lists and steps that could be undone are made anew: they spoke of what is gone.
  register.continueUnder(register.dataKey);
  const cleaned = cleanUp(register);
  return certificateOf(register, cleaned, copies, keyDestroyed, { erased, values, dataFolder: options.dataFolder });
}

/**
 * Takes what was erased out of free pages, the write-ahead log and the backups, where that was not yet done.
 * @returns undefined where no erasure is unfinished
 */
export function finishErasure(register: Register): ErasureCertificate | undefined {
  const { connection } = register;
  const unfinished = readFact(connection, "unfinishedErasure");
  if (unfinished === undefined) return undefined;
  const keyDestroyed = hasContentKeys(connection) && athletesAmong(unfinished.records).length > 0;
  return certificateOf(register, cleanUp(register), copiesElsewhere(register), keyDestroyed);
}

function athletesAmong(records: readonly { readonly kind: string; readonly id: string }[]): readonly string[] {
  return records.flatMap(({ kind, id }) => (kind === "athletes" ? [id] : []));
}

function copiesElsewhere(register: Register): readonly string[] {
  return register.contents.reads
    .records("copies")
    .map(({ content }) => `${content.path} (${content.kind}, ${content.at.slice(0, 10)})`);
}

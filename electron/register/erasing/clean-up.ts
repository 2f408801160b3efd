import { basename } from "node:path";
import { MachineTrouble, RequestRefused } from "../../refusals/request-refused.ts";
import { saysDamaged } from "../connection.ts";
import { eraseRecords } from "../erase-records.ts";
import { diskTrouble } from "../file-sink.ts";
import { type BackupTrouble, rewriteBackupContents } from "../kept-backups.ts";
import { emptyLog } from "../leave-nothing-behind.ts";
import { presentKinds } from "../present-kinds.ts";
import { namesOf } from "../real-path.ts";
import type { RecordKey } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { readFact, removeFact } from "../register-facts.ts";
import { keptBackups } from "../register-folder.ts";
import { reached } from "../steps.ts";
import { keysOfCopies } from "../unfinished.ts";

/** What became of the files after records were removed from the register. */
export interface CleanedUp {
  /** Files that were written anew without what was erased. */
  readonly writtenAnew: readonly string[];
  /** Copies that cannot be changed from here, one line each. */
  readonly outOfReach: readonly string[];
  /** One sentence for each step that the machine stood in the way of; a later try does it. */
  readonly remains: readonly string[];
}

/**
 * Takes what was removed from the register out of its free pages, its log and its backups. Whatever stands in the way
 * of one step, the others are done; while a step remains, the register notes it and the next opening tries again.
 */
export function cleanUp(register: Register): CleanedUp {
  const records = (readFact(register.connection, "unfinishedErasure")?.records ?? []) as readonly RecordKey[];
  const known = keysOfCopies(register);
  const ofRegister = cleanRegister(register);
  const backups = keptBackups(register.file).map((path) => cleanBackup(register, path, known, records));
  const steps: readonly Step[] = [ofRegister, ...backups];
  register.backupTroubles = backups.flatMap(({ trouble }) => trouble ?? []);
  const cleaned = {
    writtenAnew: steps.flatMap(({ writtenAnew }) => writtenAnew ?? []),
    outOfReach: steps.flatMap(({ outOfReach }) => outOfReach ?? []),
    remains: steps.flatMap(({ remains }) => remains ?? []),
  };
  if (cleaned.remains.length > 0) return cleaned;
  const remains = attempted(
    () => register.connection.transaction(() => removeFact(register.connection, "unfinishedErasure")),
    (trouble) => `All of it is done, but that could not be noted in the register. ${trouble}`,
  );
  reached("erasure ended");
  return { ...cleaned, remains };
}

interface Step {
  readonly writtenAnew?: readonly string[];
  readonly outOfReach?: readonly string[];
  readonly remains?: readonly string[];
  /** Of a backup that stays as it is. */
  readonly trouble?: BackupTrouble;
}

function cleanRegister({ connection, file }: Register): Step {
  const before = attempted(
    () => emptyLog(connection),
    (trouble) => `The register's log could not be emptied and may still hold what was erased. ${trouble}`,
  );
  if (before.length > 0) return { remains: before };
  const compacted = attempted(
    () => {
      connection.execute("VACUUM");
      reached("file written anew");
    },
    (trouble) =>
      `What was erased is overwritten with zeros in the register's file, but the file could not be written anew, which needs room for a second one. ${trouble}`,
  );
  // Writing it anew went through the log, also where it stopped half-way.
  const after = attempted(
    () => emptyLog(connection),
    (trouble) => `The register's log could not be emptied. ${trouble}`,
  );
  const remains = [...compacted, ...after];
  return remains.length > 0 ? { remains } : { writtenAnew: [file] };
}

function cleanBackup(
  { circumstances }: Register,
  path: string,
  known: readonly Uint8Array[],
  records: readonly RecordKey[],
): Step {
  const names = namesOf(path);
  try {
    rewriteBackupContents(path, known, ({ store, journal }) => {
      // One of an earlier schema has no table for some of them.
      const kinds = presentKinds(store.connection);
      const present = records.filter(({ kind }) => kinds.includes(kind));
      eraseRecords(store, journal, present, circumstances);
    });
  } catch (error) {
    const trouble = diskTrouble(error, path) ?? error;
    if (!(trouble instanceof RequestRefused)) throw error;
    if (trouble instanceof MachineTrouble && !saysDamaged(trouble)) {
      return { remains: [`The backup ${basename(path)} still holds what was erased. ${troubleIn(trouble)}`] };
    }
    const because = trouble.message.replace(/\.$/, "");
    return { outOfReach: [`${path}: ${because}.`], trouble: { path, because } };
  }
  if (names === 1) return { writtenAnew: [path] };
  return {
    writtenAnew: [path],
    outOfReach: [`a second name of ${path} (a hard link elsewhere), which keeps what the backup held before`],
  };
}

/** @returns nothing where it could be done, else one sentence */
function attempted(work: () => void, sentence: (trouble: string) => string): readonly string[] {
  try {
    work();
    return [];
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    return [sentence(troubleIn(error))];
  }
}

/** What went wrong and what to do; what an inner step says of its own work is not what is true of the erasure. */
function troubleIn(error: RequestRefused): string {
  return error instanceof MachineTrouble ? new MachineTrouble(error.trouble, error.advice).message : error.message;
}

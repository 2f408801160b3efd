import { RequestRefused } from "../request-refused.ts";
import { AthleteLines } from "./athlete-lines.ts";
import { previewOf, withBackup } from "./backups.ts";
import { Connection } from "./connection.ts";
import { copyDatabase, copyInto } from "./copy-database.ts";
import { encryptedFields, plainFields } from "./field-protection.ts";
import { Journal } from "./journal.ts";
import { bringUpToDate, settle } from "./open-register.ts";
import { unwrapKey } from "./passphrase-key.ts";
import { RecordStore } from "./record-store.ts";
import type { Register } from "./register.ts";
import { readFact, registerId } from "./register-facts.ts";
import { backupPath } from "./register-folder.ts";
import type { BackupPreview } from "./register-views.ts";
import { verifyRegister } from "./verify-register.ts";

/** The passphrases a backup may need: of the sealed file, and of the register inside where it is not today's. */
export interface BackupPassphrases {
  readonly file?: Uint8Array;
  readonly register?: Uint8Array;
}

/** What a backup holds, before anything is replaced by it. */
export function previewBackup(
  register: Register,
  path: string,
  passphrases: BackupPassphrases,
): Promise<BackupPreview> {
  return withBackup(path, passphrases.file, register.file, previewOf);
}

/**
 * Puts a backup in the place of the register's content, after the backup was checked to the last byte and a copy of
 * today's content was made beside it.
 * @throws RequestRefused when the backup cannot be used; the register is then as it was
 */
export async function restoreBackup(register: Register, path: string, passphrases: BackupPassphrases): Promise<void> {
  register.requireWritable();
  const dataKey = await withBackup(path, passphrases.file, register.file, async (backup) => {
    const key = keyOf(backup, register.dataKey, passphrases.register);
    checkContents(backup, key);
    await copyDatabase(
      register.connection,
      backupPath(register.file, "before-restoring", register.circumstances.now()),
    );
    register.connection.close();
    try {
      await copyInto(backup, register.file);
    } finally {
      const connection = new Connection(register.file);
      settle(connection);
      register.continueOn(connection, undefinedUnlessEncrypted(connection, key, register.dataKey));
    }
    return key;
  });
  await bringUpToDate(register.connection, register.file, register.circumstances);
  register.continueUnder(dataKey);
  const { who, now } = register.circumstances;
  const { store, journal } = register.contents;
  store.connection.transaction(() => journal.append(now(), { action: "restored from a backup", who }, []));
}

/** After a copy that was broken off the register is what it was before; then its own key still fits. */
function undefinedUnlessEncrypted(
  connection: Connection,
  restored: Uint8Array | undefined,
  before: Uint8Array | undefined,
): Uint8Array | undefined {
  if (readFact(connection, "protection") === undefined) return undefined;
  return restored !== undefined && opens(connection, restored) ? restored : before;
}

function keyOf(
  backup: Connection,
  today: Uint8Array | undefined,
  passphrase: Uint8Array | undefined,
): Uint8Array | undefined {
  const wrapped = readFact(backup, "protection");
  if (wrapped === undefined) return undefined;
  if (today !== undefined && opens(backup, today)) return today;
  const key = passphrase === undefined ? undefined : unwrapKey(wrapped, passphrase);
  if (key !== undefined) return key;
  throw new RequestRefused("The register in this backup has a passphrase of its own: give that one to restore it.");
}

function opens(connection: Connection, key: Uint8Array): boolean {
  const journal = new Journal(connection, registerId(connection), encryptedFields(key));
  return journal.readTitle(1) !== undefined;
}

function checkContents(backup: Connection, key: Uint8Array | undefined): void {
  const protection = key === undefined ? plainFields : encryptedFields(key);
  const id = registerId(backup);
  const { problems } = verifyRegister(
    new RecordStore(backup, id, protection),
    new Journal(backup, id, protection),
    new AthleteLines(backup, id, protection),
    true,
  );
  const [first] = problems;
  if (first !== undefined) throw new RequestRefused(`This backup is damaged and was not used. ${first}`);
}

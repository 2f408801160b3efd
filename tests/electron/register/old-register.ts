import { closeSync, openSync } from "node:fs";
import { Connection } from "../../../electron/register/connection.ts";
import { Journal } from "../../../electron/register/journal.ts";
import { encrypt, newKey } from "../../../electron/register/keys/encryption.ts";
import { directFields, type FieldProtection, plainFields } from "../../../electron/register/keys/field-protection.ts";
import { migrate } from "../../../electron/register/migrations.ts";
import { wrapKey } from "../../../electron/register/passphrase-key.ts";
import { RecordStore } from "../../../electron/register/record-store.ts";
import { registerId, writeFact, writeIdentity } from "../../../electron/register/register-facts.ts";

/** Identifiers of what an old register holds. */
export const oldIds = {
  athlete: "00000000-0000-4000-8000-000000000001",
  injury: "00000000-0000-4000-8000-000000000002",
  session: "00000000-0000-4000-8000-000000000003",
} as const;

/** What an old register holds besides. */
interface OldOptions {
  /** Puts its fields under a data key itself, as programs of schemas 1 to 3 did. */
  readonly passphrase?: Uint8Array;
  readonly furtherSessions?: number;
}

/** Writes a register of an earlier schema with an athlete, an injury and a session in it. */
export function makeOldRegister(file: string, schema: number, options: OldOptions = {}): void {
  closeSync(openSync(file, "wx", 0o600));
  const connection = new Connection(file);
  connection.execute("PRAGMA journal_mode = WAL; PRAGMA foreign_keys = ON;");
  connection.transaction(() => {
    migrate(connection, schema);
    writeIdentity(connection, new Date("2026-01-05T08:00:00Z"));
    const id = registerId(connection);
    const fields = options.passphrase === undefined ? plainFields : underPassphrase(connection, options.passphrase);
    const store = new RecordStore(connection, id, fields);
    const records = [
      { kind: "athletes", id: oldIds.athlete, references: {}, content: { code: "OLD-1", name: "Ylva Brekke" } },
      {
        kind: "injuries",
        id: oldIds.injury,
        references: { athlete: oldIds.athlete },
        content: { side: "right", structure: "anterior cruciate ligament", date: "2025-11-20" },
      },
      {
        kind: "sessions",
        id: oldIds.session,
        references: { athlete: oldIds.athlete },
        content: { folder: "first", date: "2026-01-05", milestone: "month 2" },
      },
      ...Array.from({ length: options.furtherSessions ?? 0 }, (_, at) => ({
        kind: "sessions" as const,
        id: `00000000-0000-4000-8000-${String(100 + at).padStart(12, "0")}`,
        references: { athlete: oldIds.athlete },
        content: { folder: `further ${at}`, date: "2026-02-05", milestone: "month 3" },
      })),
    ] as const;
    for (const record of records) store.write(record.kind, record.id, { ...record, binned: false });
    const changes = records.map(({ kind, id: record, references, content }) => ({
      kind,
      id: record,
      before: null,
      after: { references, binned: false, content },
    }));
    const title = { action: "session added", who: "tester" } as const;
    new Journal(connection, id, fields).append(new Date("2026-01-05T08:01:00Z"), title, changes);
  });
  connection.close();
}

function underPassphrase(connection: Connection, passphrase: Uint8Array): FieldProtection {
  const dataKey = newKey();
  writeFact(connection, "protection", wrapKey(dataKey, passphrase));
  return { ...directFields(dataKey), write: (plain, place) => encrypt(dataKey, plain, place) };
}

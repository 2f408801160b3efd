import { closeSync, openSync } from "node:fs";
import { Connection } from "../../../electron/register/connection.ts";
import { Journal } from "../../../electron/register/journal.ts";
import { plainFields } from "../../../electron/register/keys/field-protection.ts";
import { migrate } from "../../../electron/register/migrations.ts";
import { RecordStore } from "../../../electron/register/record-store.ts";
import { registerId, writeIdentity } from "../../../electron/register/register-facts.ts";

/** Identifiers of what an old register holds. */
export const oldIds = {
  athlete: "00000000-0000-4000-8000-000000000001",
  injury: "00000000-0000-4000-8000-000000000002",
  session: "00000000-0000-4000-8000-000000000003",
} as const;

/** Writes a register of an earlier schema with an athlete, an injury and a session in it. */
export function makeOldRegister(file: string, schema: number): void {
  closeSync(openSync(file, "wx", 0o600));
  const connection = new Connection(file);
  connection.execute("PRAGMA journal_mode = WAL; PRAGMA foreign_keys = ON;");
  connection.transaction(() => {
    migrate(connection, schema);
    writeIdentity(connection, new Date("2026-01-05T08:00:00Z"));
    const id = registerId(connection);
    const store = new RecordStore(connection, id, plainFields);
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
    ] as const;
    for (const record of records) store.write(record.kind, record.id, { ...record, binned: false });
    const changes = records.map(({ kind, id: record, references, content }) => ({
      kind,
      id: record,
      before: null,
      after: { references, binned: false, content },
    }));
    const title = { action: "session added", who: "tester" } as const;
    new Journal(connection, id, plainFields).append(new Date("2026-01-05T08:01:00Z"), title, changes);
  });
  connection.close();
}

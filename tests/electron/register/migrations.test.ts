import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { Connection, textOf } from "../../../electron/register/connection.ts";
import { latestSchema, migrate, migrations, schemaOf } from "../../../electron/register/migrations.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { backupFolder } from "../../../electron/register/register-folder.ts";
import { makeOldRegister, oldIds } from "./old-register.ts";
import { filledRegister, temporaryFolder, testCircumstances, testRegister } from "./register-world.ts";

const earlierSchemas = migrations.map(({ schema }) => schema).filter((schema) => schema < latestSchema);

test("migrations are numbered from 1 without a gap, and each has a name of its own", () => {
  expect(migrations.map(({ schema }) => schema)).toEqual(migrations.map((_, index) => index + 1));
  expect(new Set(migrations.map(({ name }) => name)).size).toBe(migrations.length);
});

describe.each(earlierSchemas)("a register of schema %i with data in it", (schema) => {
  test("is brought up to date with everything it held, and takes what the newer schema adds", async () => {
    const file = join(temporaryFolder(), "register.sqlite");
    makeOldRegister(file, schema);
    const register = await testRegister({ file });
    expect(schemaOf(register.connection)).toBe(latestSchema);
    expect(register.reads.athletes()).toEqual([
      {
        id: oldIds.athlete,
        code: "OLD-1",
        name: "Ylva Brekke",
        involved: "right",
        sessions: 1,
        lastSession: { id: oldIds.session, date: "2026-01-05", milestone: "month 2" },
      },
    ]);
    register.writes.act("copy made elsewhere", (changes) =>
      changes.add("copies", {}, { kind: "backup", path: "/elsewhere", at: "2026-01-06T08:00:00Z", encrypted: false }),
    );
    expect(register.verify().problems).toEqual([]);
  });

  test("is copied as it was before the migration", async () => {
    const file = join(temporaryFolder(), "register.sqlite");
    makeOldRegister(file, schema);
    const register = await testRegister({ file });
    const [copy = ""] = readdirSync(backupFolder(register.file));
    expect(copy).toMatch(new RegExp(`^before-schema-${latestSchema}-`));
    const connection = new Connection(join(backupFolder(register.file), copy), { readOnly: true });
    expect(schemaOf(connection)).toBe(schema);
    expect(connection.all("SELECT id FROM athletes").map((row) => textOf(row, "id"))).toEqual([oldIds.athlete]);
    connection.close();
  });

  test("ends with the same tables as a new register", async () => {
    const file = join(temporaryFolder(), "register.sqlite");
    makeOldRegister(file, schema);
    const schemaText = ({ connection }: { readonly connection: Connection }) =>
      connection.all("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
    const migrated = await testRegister({ file });
    const fresh = await testRegister();
    expect(schemaText(migrated)).toEqual(schemaText(fresh));
  });
});

test("a register of a newer schema is refused in a sentence and left as it is", async () => {
  const register = await filledRegister();
  register.connection.execute(`PRAGMA user_version = ${latestSchema + 1}`);
  register.close();
  const before = readFileSync(register.file);
  await expect(openRegister(register.file)).rejects.toThrow(
    `This register was written by a newer version of Counterpoise (schema ${latestSchema + 1}; this version knows up to ${latestSchema}).`,
  );
  expect(readFileSync(register.file).equals(before)).toBe(true);
});

test("a migration that breaks off leaves the schema and the data of before", () => {
  const file = join(temporaryFolder(), "register.sqlite");
  makeOldRegister(file, 1);
  const connection = new Connection(file);
  // The step finds a table of its name there already, after it has begun.
  connection.execute("CREATE TABLE operations_injury (id TEXT)");
  expect(() => migrate(connection)).toThrow();
  expect(schemaOf(connection)).toBe(1);
  expect(connection.all("SELECT name FROM sqlite_schema WHERE name = 'copies'")).toEqual([]);
  expect(connection.all("SELECT id FROM sessions")).toHaveLength(1);
  connection.close();
});

test("a file of another kind is refused and not touched", async () => {
  const folder = temporaryFolder();
  const text = join(folder, "notes.txt");
  writeFileSync(text, "Not a register at all, only some notes that are long enough to be looked at.".repeat(20));
  const before = readFileSync(text);
  await expect(openRegister(text, { circumstances: testCircumstances() })).rejects.toThrow("The file is no register");
  expect(readFileSync(text).equals(before)).toBe(true);
  const other = join(folder, "other.sqlite");
  const connection = new Connection(other);
  connection.execute("CREATE TABLE things (id TEXT)");
  connection.close();
  await expect(openRegister(other)).rejects.toThrow("The file is no register");
  await expect(openRegister(join(folder, "nowhere.sqlite"))).rejects.toThrow("There is no register at");
});

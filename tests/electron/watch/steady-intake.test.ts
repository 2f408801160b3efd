import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { writtenTime } from "../../../electron/cautions/add-cautions.ts";
import { Connection } from "../../../electron/register/connection.ts";
import { readKeptSession } from "../../../electron/register-host/kept-session.ts";
import { Analyses } from "../../../electron/workspace/analyses.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { ownWorld } from "../register-host/host-world.ts";

const recordings = 400;

/** A short recording whose bytes differ from every other's, its length of four digits. */
function shortRecording(number: number): string {
  const lines = Array.from({ length: 80 }, (_, row) => `${(row / 100).toFixed(2)};340.5;${340 + (row % 7)}.5`);
  return `time (s);left (N);right (N)\n${lines.join("\n")}\n${"\n".repeat(number)}`;
}

/** Counts what is done to the register's file and how many recordings are analysed. */
function counting() {
  const counts = { statements: 0, rowsRead: 0, journalBytes: 0, analysedAlone: 0, analysedWithAll: 0 };
  const { run, one, all } = Connection.prototype;
  const { of, ofFile } = Analyses.prototype;
  const spies = [
    vi.spyOn(Connection.prototype, "run").mockImplementation(function (this: Connection, sql, ...values) {
      counts.statements += 1;
      const bytes = values.filter((value) => value instanceof Uint8Array);
      if (sql.includes("journal")) counts.journalBytes += bytes.reduce((sum, each) => sum + each.byteLength, 0);
      run.call(this, sql, ...values);
    }),
    vi.spyOn(Connection.prototype, "one").mockImplementation(function (this: Connection, sql, ...values) {
      counts.rowsRead += 1;
      return one.call(this, sql, ...values);
    }),
    vi.spyOn(Connection.prototype, "all").mockImplementation(function (this: Connection, sql, ...values) {
      const rows = all.call(this, sql, ...values);
      counts.rowsRead += rows.length;
      return rows;
    }),
    vi.spyOn(Analyses.prototype, "ofFile").mockImplementation(function (this: Analyses, ...given) {
      counts.analysedAlone += 1;
      return ofFile.apply(this, given);
    }),
    vi.spyOn(Analyses.prototype, "of").mockImplementation(function (this: Analyses, session) {
      counts.analysedWithAll += session.files.length;
      return of.call(this, session);
    }),
  ];
  const stop = () => {
    for (const spy of spies) spy.mockRestore();
  };
  onTestFinished(stop);
  return { counts, stop };
}

test("the 400th recording of a watched session costs what the 100th did, and memory says what the register keeps", async () => {
  const { host, home, athlete } = await ownWorld({ circumstances: { who: "tester", now: () => new Date() } });
  const session = crypto.randomUUID();
  await host.call("sessions.start", { session, athlete, plan: { date: writtenTime(new Date()).slice(0, 10) } });
  const folder = join(temporaryFolder(), "watched");
  mkdirSync(folder);
  const nameOf = (number: number) => `r-${String(number).padStart(3, "0")}.csv`;
  for (let number = 0; number < recordings; number += 1) {
    writeFileSync(join(folder, nameOf(number)), shortRecording(number));
  }
  const costs: (typeof counts)[] = [];
  const { counts, stop } = counting();
  const takeIn = home.workspace.takeIn.bind(home.workspace);
  vi.spyOn(home.workspace, "takeIn").mockImplementation((...given) => {
    const before = { ...counts };
    const taken = takeIn(...given);
    const cost = Object.entries(counts).map(([what, count]) => [what, count - before[what as keyof typeof before]]);
    costs.push(Object.fromEntries(cost));
    return taken;
  });
  await host.call("watch.start", { folder });
  await host.call("watch.expect", { next: { test: "countermovementJump", limb: "both" } });
  while (costs.length < recordings) await new Promise((resolve) => setTimeout(resolve, 20));
  await host.call("watch.stop", {});
  stop();
  expect(costs[100]).toMatchObject({ analysedAlone: 1, analysedWithAll: 0 });
  expect(costs[100]?.journalBytes).toBeGreaterThan(100);
  expect(costs[recordings - 1]).toEqual(costs[100]);
  // What was put together here piece by piece is what reading the register again gives.
  const [open] = home.workspace.sessions.filter(({ keptAs }) => keptAs === session);
  const kept = readKeptSession(home.register, session, []);
  expect(open?.files.map(({ path }) => path)).toEqual(
    Array.from({ length: recordings }, (_, number) => nameOf(number)),
  );
  expect(kept?.files.map(({ path, sha256 }) => [path, sha256])).toEqual(
    open?.files.map(({ path, sha256 }) => [path, sha256]),
  );
  expect(kept?.stated).toEqual(open?.stated);
  expect(open?.stated.description.files).toContainEqual({
    file: nameOf(recordings - 1),
    test: "countermovementJump",
    limb: "both",
  });
});

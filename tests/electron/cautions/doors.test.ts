import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { closedFor, gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { parseSessionFile, writeSessionFile } from "../../../core/stated/session-file.ts";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import type { Register } from "../../../electron/register/register.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { runInProcess } from "../command/run-in-process.ts";
import { directHost } from "../direct-host.ts";
import { temporaryFolder, testRegister } from "../register/register-world.ts";
import { jumpText } from "../simulated-recordings.ts";
import { type CautionCase, cautionCases } from "./caution-cases.ts";
import { harderTrials, sheetWords } from "./sheet-words.ts";

const twoLeg = { test: "countermovementJump", legs: "both" } as const;
const singleAndDrop = [
  { test: "countermovementJump", legs: "single" },
  { test: "dropJump", legs: "both" },
  { test: "dropJump", legs: "single" },
] as const;

const wordOf = (closed: boolean) => (closed ? "withheld" : "open");

/** What a description does to statuses, by the kinds of test. */
function statusesOf(description: SessionDescription) {
  const gate = gateOf(description, defaultSettings, [], harderTrials);
  return {
    twoLeg: wordOf(closedFor(gate, twoLeg) !== ""),
    singleAndDrop: wordOf(singleAndDrop.every((each) => closedFor(gate, each) !== "")),
  };
}

const expectedOf = ({ twoLeg: both, singleAndDrop: others }: CautionCase) => ({ twoLeg: both, singleAndDrop: others });

/** The cases by folder, so that many go through one door in one go. */
const numbered = cautionCases.map((each, at) => ({ ...each, folder: `case-${String(at).padStart(2, "0")}` }));

function expectAlike(descriptions: ReadonlyMap<string, SessionDescription>): void {
  const found = numbered.map(({ what, folder }) => {
    const description = descriptions.get(folder);
    return { what, ...(description !== undefined && statusesOf(description)) };
  });
  expect(found).toEqual(numbered.map((each) => ({ what: each.what, ...expectedOf(each) })));
  const sheets = numbered.filter(({ folder, sheet }) => !sheetWords(descriptions.get(folder) ?? {}).includes(sheet));
  expect(sheets.map(({ what }) => what)).toEqual([]);
}

describe("each caution, at each moment, does the same through every door", () => {
  test("through session.json", () => {
    expectAlike(
      new Map(
        numbered.map(({ folder, description }) => {
          const read = parseSessionFile(new TextEncoder().encode(writeSessionFile(description)));
          expect(read).toEqual({ description, findings: [] });
          return [folder, read.description];
        }),
      ),
    );
  });

  test("through the import into a register, and through an archive of it into another", async () => {
    const first = await testRegister();
    for (const { folder, description } of numbered) {
      const files = [recordingFile("a.csv", new TextEncoder().encode(folder))];
      const athlete = { code: folder };
      const found = {
        folder,
        files,
        unreadable: [],
        descriptionFindings: [],
        description: { ...description, athlete },
      };
      importSession(first, found);
    }
    expectAlike(descriptionsIn(first));
    const path = join(temporaryFolder(), "all.zip");
    writeArchive(first, path);
    const second = await testRegister();
    await mergeArchive(second, path);
    expectAlike(descriptionsIn(second));
  });

  test("through the screens, where answers and readings are added one after another", async () => {
    // Written a day later than everything the cases are about, as a past session.
    const workspace = new WorkspaceState(defaultSettings, "none", undefined, () => new Date("2026-10-15T09:00:00Z"));
    const host = directHost(makeHandlers(workspace, "browser"));
    const descriptions = new Map<string, SessionDescription>();
    for (const { folder, description } of numbered) {
      const { cautions, readings = [], gateOpenings = [], ...stated } = description;
      const { answers = [], ...asked } = cautions ?? {};
      const start = { ...stated, ...(Object.keys(asked).length > 0 && { cautions: asked }) };
      const bytes = new TextEncoder().encode(writeSessionFile(start));
      await host.call("recordings.add", { path: `${folder}/session.json`, bytes });
      const add = (addition: object) => host.call("cautions.add", { folder, addition });
      for (const { written: _written, ...each } of answers) await add({ answers: each });
      for (const { written: _written, ...each } of readings) await add({ readings: [each] });
      for (const { written: _written, ...each } of gateOpenings) {
        const adding = add({ opening: each });
        // A refused opening opens nothing: that is what the row expects.
        if (each.opens.some(({ code }) => code === "locking") && each.doctor === undefined) {
          await expect(adding).rejects.toThrow("which doctor agreed");
        } else await adding;
      }
      descriptions.set(folder, workspace.analysis(folder).result.description);
    }
    expectAlike(descriptions);
  });

  test("through the command line, whose document says which tests are closed", async () => {
    const root = temporaryFolder();
    const jump = jumpText("left", 113, 0.12);
    for (const { folder, description } of numbered) {
      mkdirSync(join(root, folder));
      const files = [{ file: "a.csv", test: "countermovementJump", limb: "left" } as const];
      writeFileSync(join(root, folder, "session.json"), writeSessionFile({ ...description, files }));
      writeFileSync(join(root, folder, "a.csv"), jump);
    }
    const ran = await runInProcess("analyze", root, "--format", "json");
    const { sessions, criteria } = JSON.parse(ran.out) as DocumentOfCases;
    const found = numbered.map(({ what, folder }) => {
      const { closures = [] } = sessions.find(({ session }) => session === folder)?.gate ?? {};
      const closes = (load: string, limb: string) =>
        closures.some(
          ({ closes: loads, limbs }) => loads.includes(load) && (limbs === undefined || limbs.includes(limb)),
        );
      return {
        what,
        twoLeg: wordOf(closes("twoLegJump", "both")),
        singleAndDrop: wordOf(closes("singleLegJump", "left") && closes("singleLegDrop", "left")),
      };
    });
    expect(found).toEqual(numbered.map((each) => ({ what: each.what, ...expectedOf(each) })));
    // A closed test has no status but that word; an open one never has it.
    const wrong = criteria.filter(({ session, test: kind, legs, status }) => {
      const row = numbered.find(({ folder }) => folder === session);
      const expected = kind === "countermovementJump" && legs === "both" ? row?.twoLeg : undefined;
      return expected !== undefined && (status === "withheld-today") !== (expected === "withheld");
    });
    expect(wrong).toEqual([]);
  });

  test("through --cautions not-known, which opens what nobody asked and none of what speaks against jumping", async () => {
    const root = temporaryFolder();
    for (const [folder, stated] of [
      ["never-asked", { involved: "right", date: "2026-10-13" }],
      ["locked", numbered.find(({ what }) => what === "yes to locking before the session")!.description],
    ] as const) {
      mkdirSync(join(root, folder));
      writeFileSync(join(root, folder, "session.json"), writeSessionFile(stated));
      writeFileSync(join(root, folder, "a.csv"), jumpText("left", 113, 0.12));
    }
    const open = async (...typed: readonly string[]) => {
      const ran = await runInProcess("analyze", root, "--format", "json", ...typed);
      return (JSON.parse(ran.out) as DocumentOfCases).sessions.map(({ session, gate }) => [session, gate.open]);
    };
    expect(await open()).toEqual([
      ["locked", false],
      ["never-asked", false],
    ]);
    expect(await open("--cautions", "not-known", "--by", "K. L.")).toEqual([
      ["locked", false],
      ["never-asked", true],
    ]);
    mkdirSync(join(root, "live"));
    const today = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
    writeFileSync(join(root, "live", "session.json"), writeSessionFile({ involved: "right", date: today }));
    writeFileSync(join(root, "live", "a.csv"), jumpText("left", 113, 0.12));
    const live = await runInProcess("analyze", root, "--cautions", "not-known", "--by", "K. L.");
    expect([live.code, live.out, live.err]).toEqual([
      2,
      "",
      expect.stringContaining(`this one is not: live (${today})`),
    ]);
    const nameless = await runInProcess("analyze", root, "--cautions", "not-known");
    expect([nameless.code, nameless.err]).toEqual([2, expect.stringContaining("--by NAME")]);
  });

  test("of a live session nobody can state through a screen that it is not known", async () => {
    const workspace = new WorkspaceState(defaultSettings, "none", undefined, () => new Date("2026-10-13T12:00:00Z"));
    const host = directHost(makeHandlers(workspace, "browser"));
    const bytes = new TextEncoder().encode(writeSessionFile({ involved: "right", date: "2026-10-13" }));
    await host.call("recordings.add", { path: "live/session.json", bytes });
    const addition = { answers: { notKnown: true, by: "K. L." } } as const;
    await expect(host.call("cautions.add", { folder: "live", addition })).rejects.toThrow("Of today's session");
    expect(workspace.analysis("live").result.gate.open).toBe(false);
  });
});

interface DocumentOfCases {
  readonly sessions: readonly {
    readonly session: string;
    readonly gate: {
      readonly open: boolean;
      readonly closures: readonly { readonly closes: readonly string[]; readonly limbs?: readonly string[] }[];
    };
  }[];
  readonly criteria: readonly {
    readonly session: string;
    readonly test: string;
    readonly legs: string;
    readonly status: string;
  }[];
}

function descriptionsIn(register: Register): ReadonlyMap<string, SessionDescription> {
  return new Map(
    register.reads.records("sessions").map(({ id, content }) => {
      const input = register.reads.sessionInput(id);
      if (input === undefined) throw new Error(`${content.folder} is not there.`);
      return [content.folder, input.description];
    }),
  );
}

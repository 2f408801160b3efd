import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { certificateNeedsEyes } from "../../../electron/register/erasing/certificate-words.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { temporaryFolder } from "../register/register-world.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { ownWorld } from "./host-world.ts";

async function filledWorld() {
  const world = await ownWorld();
  const session = crypto.randomUUID();
  const plan = { date: "2026-11-02" };
  const { folder } = await world.host.call("sessions.start", { session, athlete: world.athlete, plan });
  await world.host.call("recordings.add", { path: `${folder}/a.csv`, bytes: bytesOf(jumpText("both", 521)) });
  const answers = { test: "countermovementJump", limb: "both" } as const;
  await world.host.call("recordings.answer", { folder, files: ["a.csv"], answers });
  return { ...world, session };
}

const codes = async ({ host }: Awaited<ReturnType<typeof ownWorld>>) =>
  (await host.call("athletes.list", { filter: {} })).athletes.map(({ code }) => code);

describe("backups", () => {
  test("are looked at before anything is replaced; going back is complete, and today's content is kept beside", async () => {
    const world = await filledWorld();
    const { host } = world;
    const { path } = await host.call("backups.make", {});
    await host.call("records.save", {
      record: { kind: "athletes", id: crypto.randomUUID(), content: { code: "B-2" } },
    });
    expect(await host.call("backups.preview", { path })).toMatchObject({ athletes: 1, sessions: 1, recordings: 1 });
    expect(await codes(world)).toEqual(["A-1", "B-2"]);
    const restored = await host.call("backups.restore", { path });
    expect(await codes(world)).toEqual(["A-1"]);
    // Steps of what was replaced cannot be taken back any more.
    expect([restored.undo, restored.keptAs]).toEqual(["", world.session]);
    const { copies } = await host.call("copies.read", {});
    expect(copies.map(({ kind }) => kind)).toContain("kept before a restoration");
  });

  test("elsewhere can be sealed, need a whole path, and open with their passphrase alone", async () => {
    const world = await filledWorld();
    const { host } = world;
    const place = join(temporaryFolder(), "copy.sealed");
    await expect(host.call("backups.make", { place: "copy.sealed" })).rejects.toThrow("whole path");
    await host.call("backups.make", { place, passphrase: passphraseBytes(strongPassphrase) });
    expect(readFileSync(place, "latin1").includes("Brekke")).toBe(false);
    await expect(host.call("backups.preview", { path: place })).rejects.toThrow("passphrase");
    const choice = { path: place, filePassphrase: passphraseBytes(strongPassphrase) };
    expect(await host.call("backups.preview", choice)).toMatchObject({ athletes: 1 });
    await host.call("records.bin", { kind: "athletes", id: world.athlete });
    await host.call("backups.restore", choice);
    expect(await codes(world)).toEqual(["A-1"]);
  });
});

describe("the list of copies", () => {
  test("holds every copy, checks one at a time, and lets one go that is no longer there, which can be taken back", async () => {
    const { host } = await filledWorld();
    const place = join(temporaryFolder(), "copy.sealed");
    await host.call("backups.make", { place, passphrase: passphraseBytes(strongPassphrase) });
    await host.call("archive.export", {});
    const { copies } = await host.call("copies.read", {});
    expect(copies.map(({ kind, state, protection }) => [kind, state, protection])).toEqual([
      ["kept daily", "there", "none"],
      ["archive elsewhere", "unreachable", "none"],
      ["backup elsewhere", "there", "a passphrase of its own"],
    ]);
    const [daily, handedOver, sealed] = copies;
    expect(handedOver?.because).toContain("only the person who took it knows");
    expect((await host.call("copies.verify", { key: daily!.key })).copy.found?.extent).toBe("everything");
    expect((await host.call("copies.verify", { key: sealed!.key })).notChecked).toContain("not opened");
    const opened = { key: sealed!.key, passphrase: passphraseBytes(strongPassphrase) };
    expect((await host.call("copies.verify", opened)).copy.found?.problems).toEqual([]);
    await expect(host.call("copies.forget", { key: sealed!.key })).rejects.toThrow("is still there: delete it first");
    await expect(host.call("copies.forget", { key: daily!.key })).rejects.toThrow("no such copy elsewhere");
    const gone = await host.call("copies.forget", { key: handedOver!.key });
    expect(gone.undo).toBe("Take a copy off the list");
    expect((await host.call("copies.read", {})).copies).toHaveLength(2);
    await host.call("workspace.undo", { agreed: true });
    expect((await host.call("copies.read", {})).copies).toHaveLength(3);
  });

  test("is asked for by keys of one line alone", async () => {
    const { host } = await filledWorld();
    for (const key of ["", "a\nb", "x".repeat(256)]) {
      await expect(host.call("copies.verify", { key })).rejects.toThrow(/^key: /);
      await expect(host.call("copies.forget", { key })).rejects.toThrow(/^key: /);
    }
    const other = { key: "a", path: "/etc/passwd" };
    await expect(host.call("copies.verify", other)).rejects.toThrow("path");
  });
});

describe("archives", () => {
  test.each([undefined, strongPassphrase])(
    "handed over with the passphrase %s come in elsewhere with the same results",
    async (passphrase) => {
      const world = await filledWorld();
      const sealed = passphrase === undefined ? {} : { passphrase: passphraseBytes(passphrase) };
      const { file } = await world.host.call("archive.export", { athlete: world.athlete, ...sealed });
      expect(file?.name).toBe(passphrase === undefined ? "A-1-2026-11-02.zip" : "A-1-2026-11-02.sealed");
      const before = await world.host.call("workspace.read", {});
      const other = await ownWorld();
      await other.host.call("workspace.undo", { agreed: true });
      const merged = await other.host.call("archive.import", { bytes: file!.bytes, ...sealed });
      expect(merged).toMatchObject({ recordings: 1, kept: 0 });
      const opened = await other.host.call("sessions.open", { session: world.session });
      expect(opened.session).toEqual(before.session);
      expect(opened.undo).toBe("Import an archive");
      expect(await other.host.call("archive.import", { bytes: file!.bytes, ...sealed })).toMatchObject({ added: 0 });
      expect(readdirSync(other.dataFolder).filter((name) => name.includes("passing"))).toEqual([]);
    },
  );

  test("go to a place of the person's choice and come from there", async () => {
    const world = await filledWorld();
    const place = join(temporaryFolder(), "all.zip");
    expect(await world.host.call("archive.export", { place })).not.toHaveProperty("file");
    expect(existsSync(place)).toBe(true);
    const other = await ownWorld();
    await other.host.call("archive.import", { place });
    expect((await codes(other)).length).toBeGreaterThan(0);
  });
});

describe("erasing", () => {
  test("names what goes and which copies elsewhere remain, and needs the bin first", async () => {
    const world = await filledWorld();
    const { host, athlete, dataFolder } = world;
    const key = { kind: "athletes", id: athlete } as const;
    await host.call("backups.make", {});
    const place = join(temporaryFolder(), "elsewhere.zip");
    await host.call("archive.export", { place });
    await host.call("archive.export", { athlete });
    await expect(host.call("records.erase", key)).rejects.toThrow("Only what lies in the bin can be erased");
    const binned = await host.call("records.bin", key);
    expect(binned.sessions).toEqual([]);
    expect((await host.call("bin.read", {})).records.map(({ title }) => title)).toEqual(["Athlete A-1, Ylva Brekke"]);
    const preview = await host.call("records.previewErasure", key);
    expect(preview).toMatchObject({ athletes: 1, sessions: 1, recordings: 1 });
    expect(preview.backups).toBeGreaterThan(0);
    expect(preview.copiesElsewhere).toEqual([
      `${place} (archive, 2026-11-02)`,
      "handed over as A-1-2026-11-02.zip (archive, 2026-11-02)",
    ]);
    const { certificate } = await host.call("records.erase", key);
    expect(certificate).toMatchObject({
      erased: { athletes: 1 },
      remains: [],
      copiesElsewhere: preview.copiesElsewhere,
    });
    expect(certificateNeedsEyes(certificate)).toBe(false);
    const undone = await host.call("workspace.read", {});
    expect([undone.undo, (await host.call("bin.read", {})).records]).toEqual(["", []]);
    world.close();
    for (const name of readdirSync(dataFolder, { recursive: true, encoding: "utf8" })) {
      if (!name.endsWith(".sqlite")) continue;
      expect(readFileSync(join(dataFolder, name), "latin1").includes("Brekke"), name).toBe(false);
    }
  });

  test("what lies in the bin comes out again with everything that hangs on it", async () => {
    const world = await filledWorld();
    const key = { kind: "athletes", id: world.athlete } as const;
    await world.host.call("records.bin", key);
    expect(await codes(world)).toEqual([]);
    await world.host.call("records.takeOut", key);
    const { page } = await world.host.call("athletes.page", { athlete: world.athlete });
    expect(page?.sessions.map(({ recordings }) => recordings.length)).toEqual([1]);
  });
});

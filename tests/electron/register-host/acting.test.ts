import { expect, test } from "vitest";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { ownWorld, registerOf } from "./host-world.ts";

const passphrase = () => passphraseBytes("nine grey geese on a pond");

test("an entry carries who acted beside the system's user, from the moment it is said, and locking forgets it", async () => {
  const { host, home, athlete } = await ownWorld();
  const save = (level: string) =>
    host.call("records.save", { record: { kind: "athletes", id: athlete, content: { code: "A-1", level } } });
  const newest = () => home.register.reads.journal(1)[0];
  expect(registerOf(await host.call("workspace.read", {})).by).toBeUndefined();
  await save("club");
  expect(newest()).not.toHaveProperty("by");
  expect(registerOf(await host.call("register.actBy", { name: " Kari Lund " })).by).toBe("Kari Lund");
  await save("league");
  expect(newest()).toMatchObject({ action: "athlete changed", who: "tester", by: "Kari Lund" });
  await host.call("register.actBy", { name: "" });
  expect(registerOf(await save("national"))).toMatchObject({ by: "" });
  expect(newest()).not.toHaveProperty("by");
  await host.call("register.setPassphrase", { passphrase: passphrase() });
  await host.call("register.actBy", { name: "Kari Lund" });
  const locked = registerOf(await host.call("register.lock", {}));
  expect([locked.by, locked.lateActors]).toEqual([undefined, []]);
  await expect(host.call("register.actBy", { name: "Kari Lund" })).rejects.toThrow("locked");
  const again = registerOf(await host.call("register.unlock", { passphrase: passphrase() }));
  expect([again.by, again.lateActors]).toEqual([undefined, ["Kari Lund"]]);
});

test("a name is one line of at most a hundred letters", async () => {
  const { host } = await ownWorld();
  await expect(host.call("register.actBy", { name: "a\u0007b" })).rejects.toThrow("one line");
  await expect(host.call("register.actBy", { name: "a".repeat(101) })).rejects.toThrow();
});

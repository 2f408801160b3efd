import { expect, test, vi } from "vitest";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { hostWorld, registerOf } from "./host-world.ts";

vi.mock("../../../electron/register/backups.ts", async (original) => ({
  ...(await original<typeof import("../../../electron/register/backups.ts")>()),
  keepDailyBackup: () => Promise.reject(new RequestRefused("The disk is full.")),
}));

test("a start whose backup cannot be made opens the register all the same and says so", async () => {
  const { host } = await hostWorld();
  const register = registerOf(await host.call("register.openOwn", {}));
  expect(register).toMatchObject({
    kind: "own",
    backupTrouble: "Today's backup could not be made: The disk is full.",
  });
  expect((await host.call("athletes.list", { filter: {} })).athletes).toEqual([]);
});

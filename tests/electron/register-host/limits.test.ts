import { expect, test } from "vitest";
import { ownWorld } from "./host-world.ts";

const limitsBy = (setBy: string, painTwoLeg: number) => ({ setBy, painTwoLeg });

test("Limits that another window set in the meantime are not written over by a form that began before", async () => {
  const { host } = await ownWorld();
  expect(await host.call("limits.read", {})).toEqual({ limits: {} });
  const { limits } = await host.call("limits.set", { limits: limitsBy("K. L.", 4), before: {} });
  expect(limits).toMatchObject({ setBy: "K. L.", painTwoLeg: 4 });
  const stale = host.call("limits.set", { limits: limitsBy("A. B.", 9), before: {} });
  await expect(stale).rejects.toThrow("in the meantime by K. L.");
  expect(await host.call("limits.read", {})).toEqual({ limits });
  const next = await host.call("limits.set", { limits: limitsBy("A. B.", 2), before: limits });
  expect(next.limits).toMatchObject({ setBy: "A. B.", painTwoLeg: 2 });
});

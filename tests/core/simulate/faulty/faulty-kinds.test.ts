import { describe, expect, it } from "vitest";
import { faultyKinds } from "./faulty-kinds.ts";

describe("kinds of bad trials", () => {
  it("are at least 40 by name, each with a near miss in words", () => {
    expect(new Set(faultyKinds.map((each) => each.kind)).size).toBe(faultyKinds.length);
    expect(faultyKinds.length).toBeGreaterThanOrEqual(40);
    for (const each of faultyKinds) expect(each.fault).not.toBe(each.nearMiss);
  });

  it.each(faultyKinds)(
    "$kind: can be made from several seeds, repeats itself, and differs from its near miss",
    (kind) => {
      const bad = kind.bad(2);
      expect(kind.bad(2)).toEqual(bad);
      expect(kind.near(2)).not.toEqual(bad);
      expect(kind.bad(4).text).not.toBe(bad.text);
    },
  );
});

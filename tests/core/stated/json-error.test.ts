import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonErrorOffset } from "../../../core/stated/json-error.ts";

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe("the place where a text stops being JSON", () => {
  // Counted by hand.
  it.each([
    ['{"a": 1,}', 8],
    ['{"a" 1}', 5],
    ['{"a": 1', 7],
    ['{"a": 01}', 7],
    ['["x" "y"]', 5],
    ['{"a": "line\nbreak"}', 11],
    ["{'a': 1}", 1],
    ["[tru]", 1],
    ["", 0],
    ["{} x", 3],
  ])("in %j is %d", (text, offset) => {
    expect(jsonErrorOffset(text)).toBe(offset);
  });

  it("exists exactly where the engine refuses the text", () => {
    const damaged = fc
      .tuple(fc.json({ maxDepth: 4 }), fc.nat(), fc.constantFrom(",", "]", "}", '"', "\\", "0", "", " ", "\u0001", "e"))
      .map(
        ([text, at, put]) =>
          `${text.slice(0, at % (text.length + 1))}${put}${text.slice((at % (text.length + 1)) + 1)}`,
      );
    fc.assert(
      fc.property(fc.oneof(fc.json(), damaged, fc.string()), (text) => {
        expect(jsonErrorOffset(text) === -1).toBe(isJson(text));
      }),
      { numRuns: 2000 },
    );
  });

  it("is found without running out of stack in a text of nothing but brackets", () => {
    expect(jsonErrorOffset("[".repeat(100_000))).toBeGreaterThan(0);
  });
});

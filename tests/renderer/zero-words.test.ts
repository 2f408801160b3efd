import { expect, it } from "vitest";
import { zeroWords } from "../../renderer/traces/zero-words.ts";

const plate = (name: "left" | "right", zeroNewtons?: number) => ({
  name,
  limb: name,
  proof: "stated" as const,
  ...(zeroNewtons === undefined ? {} : { zeroNewtons }),
});

it("says what was taken off each plate, however little, and nothing where nothing was", () => {
  expect(zeroWords({ plates: [plate("left", 7.04), plate("right", -0.31)] })).toBe(
    "Taken off as the reading of the empty plate: 7.0\u00a0N on plate left and \u22120.3\u00a0N on plate right.",
  );
  expect(zeroWords({ plates: [plate("left", 4.2)] })).toBe("Taken off as the reading of the empty plate: 4.2\u00a0N.");
  expect(zeroWords({ plates: [plate("left", 0.02), plate("right")] })).toBe("");
});

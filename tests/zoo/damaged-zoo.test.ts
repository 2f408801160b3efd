import { expect, test } from "vitest";
import { hurt, hurtFiles } from "./hurt-files.ts";

/** A sample of what tests/bench/zoo-damage.ts tries in full; each file is hurt at places of its own. */
const wounds = { cuts: 8, flips: 16, flipsInHeader: 8 };

test.each(hurtFiles())(
  "$name, cut or with a flipped byte, is found, the same, or differs in one value or in what is shown of its header",
  (file) => {
    for (const { place, run } of hurt(file, wounds)) {
      const damage = run();
      expect(typeof damage === "string" ? "" : damage.complaint, place).toBe("");
    }
  },
);

import { expect, test } from "vitest";
import { graftCaution } from "../../../core/gate/graft-caution.ts";

// What each graft asks for is common practice.
test.each([
  [{ graft: "bone–tendon–bone" }, "Ask for pain in the front of the knee."],
  [{ graft: "quadriceps tendon" }, "Ask for pain in the front of the knee."],
  [{ graft: "hamstring" }, "Maximal tests of knee flexion strength from week 12."],
  [{ procedure: "high tibial osteotomy" }, "The surgeon's word comes first."],
  [{ graft: "allograft" }, ""],
  [undefined, ""],
])("%j asks: %s", (operation, caution) => {
  expect(graftCaution(operation)).toBe(caution);
});

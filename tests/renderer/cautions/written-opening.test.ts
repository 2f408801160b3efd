import { describe, expect, test } from "vitest";
import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { withCautions, writtenCautions } from "../../../electron/cautions/add-cautions.ts";
import { noOpening, openable, openingFrom, wantsDoctor } from "../../../renderer/cautions/written-opening.ts";
import { answersOf, changeAnswersOf, readingOf } from "../../core/gate/gates.ts";

const date = "2026-11-26";
const meant = `${date}T10:00`;
const now = new Date(2026, 10, 26, 10, 1);
const described: SessionDescription = {
  date,
  involved: "right",
  cautions: { answers: [answersOf(date, { givingWay: "yes" }), changeAnswersOf(date)] },
  readings: [readingOf(date, "before", 4), readingOf(date, "during", 1)],
};
const gate = gateOf(described, defaultSettings);
const written = { ...noOpening, chosen: ["pain"], by: "Dr. N. Aas", reason: "pain of the scar alone" };

const opened = (more: Partial<typeof written> = {}) => {
  const opening = openingFrom({ ...written, ...more }, gate.closures, meant);
  if ("problem" in opening) throw new Error(opening.problem);
  return withCautions(described, writtenCautions(opening.addition, date, now));
};

describe("opening what is closed", () => {
  test("opens what was chosen and leaves the rest closed, until a worse reading closes it again", () => {
    const after = gateOf(opened(), defaultSettings);
    expect(after.closures.map(({ code }) => code)).toEqual(["giving-way"]);
    expect(after.opened.map(({ closure }) => closure.code)).toEqual(["pain"]);
    const worse = { ...opened(), readings: [...(described.readings ?? []), readingOf(date, "after", 5)] };
    expect(gateOf(worse, defaultSettings).closures.map(({ code }) => code)).toEqual(["giving-way", "pain"]);
  });

  test("asks for the doctor and the day where one must have agreed", () => {
    const chosen = { ...written, chosen: ["giving-way"] };
    expect(wantsDoctor(gate.closures, chosen)).toBe(true);
    expect(openingFrom(chosen, gate.closures, meant)).toEqual({ problem: "Say which doctor agreed." });
    expect(openingFrom({ ...chosen, doctor: "Dr. O. Lie" }, gate.closures, meant)).toEqual({
      problem: "Say when the doctor agreed.",
    });
    const agreed = { ...chosen, doctor: "Dr. O. Lie", agreed: "2026-11-25" };
    expect(openingFrom(agreed, gate.closures, meant)).toHaveProperty("addition.opening.doctor.name", "Dr. O. Lie");
    expect(openingFrom({ ...agreed, agreed: "2026-11-27" }, gate.closures, meant)).toHaveProperty("problem");
  });

  test.each([
    ["nothing that is chosen", { chosen: [] }],
    ["no name", { by: " " }],
    ["no reason", { reason: "" }],
  ])("is not kept with %s", (_, changed) => {
    expect(openingFrom({ ...written, ...changed }, gate.closures, meant)).toHaveProperty("problem");
  });

  test("is not offered for what only wants an answer", () => {
    expect(openable(gateOf({ date, involved: "right" }, defaultSettings).closures)).toEqual([]);
  });
});

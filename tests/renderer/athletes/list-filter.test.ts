import { expect, test } from "vitest";
import { filterFrom, isNarrowed, openFilter } from "../../../renderer/athletes/list-filter.ts";

test("an open filter asks for everybody", () => {
  expect(filterFrom(openFilter, "2026-11-26")).toEqual({});
  expect(isNarrowed({ ...openFilter, text: "maren" })).toBe(false);
});

test("chosen parts become dates and sides", () => {
  const chosen = { text: " maren ", involved: "right", operated: "7-9", milestone: " month 7", lastSession: "3+" };
  expect(isNarrowed(chosen)).toBe(true);
  expect(filterFrom(chosen, "2026-11-26")).toEqual({
    text: "maren",
    involved: "right",
    milestone: "month 7",
    operatedFrom: "2026-02-26",
    operatedTo: "2026-04-26",
    lastSessionTo: "2026-08-26",
  });
});

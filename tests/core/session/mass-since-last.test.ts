import { describe, expect, test } from "vitest";
import { massSinceLast } from "../../../core/session/mass-since-last.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { told } from "../../told.ts";

const codes = (massKg: number, earlierDate: string) =>
  massSinceLast(
    { date: "2026-03-30", massKg },
    { date: earlierDate, massKg: 70, from: "weighed" },
    [],
    defaultSettings,
  ).map(({ code }) => code);

describe("body mass against the last session", () => {
  test("more than 5 % off within eight weeks is asked about, with both masses and the days between", () => {
    expect(codes(74, "2026-03-02")).toEqual(["mass-changed"]);
    const [said] = massSinceLast(
      { date: "2026-03-30", massKg: 66 },
      { date: "2026-03-02", massKg: 70, from: "entered" },
      [],
      defaultSettings,
    );
    // By hand: 66/70 is 5.7 % below; 2 to 30 March are 28 days.
    expect(told(said)?.message).toBe(
      "Body mass is 66.0 kg, 5.7 % below the 70.0 kg entered 28 days before (2026-03-02).",
    );
  });

  test("less than that, or longer ago, is not", () => {
    expect(codes(73, "2026-03-02")).toEqual([]);
    expect(codes(74, "2026-02-02")).toEqual([]);
    expect(codes(74, "2026-02-03")).toEqual(["mass-changed"]);
  });

  test("without an earlier session or a date nothing can be said", () => {
    expect(massSinceLast({ date: "2026-03-30", massKg: 80 }, undefined, [], defaultSettings)).toEqual([]);
    const earlier = { date: "2026-03-02", massKg: 70, from: "weighed" } as const;
    expect(massSinceLast({ massKg: 80 }, earlier, [], defaultSettings)).toEqual([]);
  });
});

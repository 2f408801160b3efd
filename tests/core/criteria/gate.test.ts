import { describe, expect, it, test } from "vitest";
import { gateOf } from "../../../core/criteria/gate.ts";
import { finding } from "../../../core/finding.ts";
import { defaultSettings, settingsWith } from "../../../core/settings.ts";

describe("the gate", () => {
  it("is open up to the clinic's limits and says what was within them", () => {
    expect(gateOf({ effusion: "trace", pain: 3 }, defaultSettings)).toEqual({
      open: true,
      reason: "Within the clinic's limits: effusion trace and pain 3 of 10.",
    });
  });

  it("is closed by effusion above trace", () => {
    expect(gateOf({ effusion: "1+", pain: 0 }, defaultSettings)).toEqual({
      open: false,
      reason: "Effusion 1+ is above the clinic's limit (trace).",
    });
  });

  it("is closed by pain above the clinic's limit, which is a setting", () => {
    expect(gateOf({ pain: 4 }, defaultSettings).open).toBe(false);
    expect(gateOf({ pain: 4 }, settingsWith({ gatePain: 5 })).open).toBe(true);
  });

  it("is closed by a stopped session, with every reason in words", () => {
    const gate = gateOf({ stopped: { reason: "pain 5/10" }, effusion: "1+", pain: 5 }, defaultSettings);
    expect(gate).toEqual({
      open: false,
      reason:
        "The session was stopped: pain 5/10. Effusion 1+ is above the clinic's limit (trace). Pain 5 of 10 is above the clinic's limit (3).",
    });
  });

  it("stays open where nobody recorded anything, and says so", () => {
    expect(gateOf({}, defaultSettings)).toEqual({ open: true, reason: "Not recorded: effusion and pain." });
  });
});

test.each(["Effusion", "efusion", "swelling", "painScore", "stoped"])(
  "An entry called %s might have been meant to close the gate, so it does",
  (where) => {
    const unread = finding("session-unreadable", "warning", "not understood", "correct it", { where });
    expect(gateOf({ pain: 0, effusion: "none" }, defaultSettings, [unread]).open).toBe(false);
  },
);

test("An unreadable entry that has nothing to do with the gate leaves it alone", () => {
  const unread = finding("session-unreadable", "warning", "not understood", "correct it", { where: "milestone" });
  expect(gateOf({ pain: 0, effusion: "none" }, defaultSettings, [unread]).open).toBe(true);
});

import { describe, expect, it } from "vitest";
import type { TrialEvent } from "../../core/events/event.ts";
import type { HopResult } from "../../core/result/trial-result.ts";
import { differenceText, hopRows } from "../../renderer/traces/hop-rows.ts";
import { exampleTrial } from "./example-session.ts";

const event = (name: TrialEvent["name"], time: number, contactIndex?: number): TrialEvent => ({
  name,
  sample: time * 1000,
  time,
  from: "detected",
  ...(contactIndex === undefined ? {} : { contactIndex }),
});

const hop = (contactIndex: number, contactTime: number, used: boolean): HopResult => ({
  contactIndex,
  contactTime,
  flightTime: 0.4,
  jumpHeightFlightTime: 0.196,
  reactiveStrengthIndex: 0.196 / contactTime,
  hopStiffness: 20000,
  used,
});

// Invented: an entry jump, three hops and the contact that ends the bout.
const events = [
  event("takeoff", 1),
  ...[1, 2, 3].flatMap((number) => [
    event("touchdown", 1 + number * 0.7, number),
    event("takeoff", 1.2 + number * 0.7, number),
  ]),
  event("touchdown", 3.8, 4),
];
const hops = [hop(1, 0.2, true), hop(2, 0.26, false), hop(3, 0.2, false)];
const trial = exampleTrial({ test: "repeatedHops", limb: "both", events, hops });

describe("the table of hops", () => {
  it("has a row for the entry jump and for every contact, each with its own events", () => {
    const rows = hopRows(trial, hops);
    expect(rows.map((row) => row.name)).toEqual(["entry", "1", "2", "3", "4"]);
    expect(rows.map((row) => [row.touchdown?.contactIndex, row.takeoff?.contactIndex])).toEqual([
      [undefined, undefined],
      [1, 1],
      [2, 2],
      [3, 3],
      [4, undefined],
    ]);
  });

  it("says whether the means use a contact, and why not", () => {
    expect(hopRows(trial, hops).map((row) => row.words)).toEqual([
      "entry jump, no hop",
      "used",
      "contact not below 0.25 s",
      "not among the best 5",
      "last contact, no hop",
    ]);
  });

  it("asks for no quick contact on one leg", () => {
    const [, , slow] = hopRows({ ...trial, limb: "left" }, hops);
    expect(slow?.words).toBe("not among the best 5");
  });

  it("tells how much later the right foot lands and leaves, where both stand on their own plates", () => {
    const side = (name: "left" | "right", later: number) =>
      [event("takeoff", 1 + later), event("touchdown", 1.7 + later, 1), event("takeoff", 1.9 + 2 * later, 1)].map(
        (each) => ({ ...each, side: name }),
      );
    const limbs = { ...trial, events: [...events, ...side("left", 0), ...side("right", 0.003)] };
    const [entry, first, second] = hopRows(limbs, hops);
    expect(differenceText(entry!.takeoffDifference!)).toBe("+3.0");
    expect(differenceText(first!.touchdownDifference!)).toBe("+3.0");
    expect(differenceText(first!.takeoffDifference!)).toBe("+6.0");
    expect(second?.touchdownDifference).toBeUndefined();
    expect(differenceText(-0.00001)).toBe("0.0");
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clampEvent,
  eventBounds,
  keyStepSeconds,
  movableEvents,
  roundKept,
  withEdit,
  withoutEdit,
} from "../../renderer/traces/event-move.ts";
import { exampleEvents } from "./example-session.ts";

const takeoff = exampleEvents.find((event) => event.name === "takeoff" && event.side === undefined)!;
const trial = { startSeconds: 0, endSeconds: 6 };

describe("moving an event by hand", () => {
  it("keeps its time to 0.1 ms", () => {
    // by hand
    expect(roundKept(1.76044)).toBe(1.7604);
    expect(clampEvent(1.76049, eventBounds(exampleEvents, takeoff, trial))).toBe(1.7605);
  });

  it("stops a millisecond before its neighbours of the whole body, whatever the limbs did", () => {
    const bounds = eventBounds(exampleEvents, takeoff, trial);
    // by hand: lowest position 1.511 s and touchdown 2.226 s of the example; the limbs' own take-offs do not count
    expect(clampEvent(0, bounds)).toBe(1.512);
    expect(clampEvent(9, bounds)).toBe(2.225);
  });

  it("lets the outer events reach the ends of the trial", () => {
    const [onset] = movableEvents(exampleEvents);
    expect(clampEvent(-5, eventBounds(exampleEvents, onset!, trial))).toBe(0);
    const last = movableEvents(exampleEvents).at(-1)!;
    expect(clampEvent(99, eventBounds(exampleEvents, last, trial))).toBe(6);
  });

  it("never leaves the bounds and always lands on a tenth of a millisecond", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0.001, max: 5, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (earliest, length, wish) => {
          const bounds = { earliest, latest: earliest + length };
          const seconds = clampEvent(wish, bounds);
          const rounding = 1e-9;
          expect(seconds).toBeGreaterThanOrEqual(bounds.earliest - rounding);
          expect(seconds).toBeLessThanOrEqual(bounds.latest + rounding);
          expect(Math.abs(seconds * 1e4 - Math.round(seconds * 1e4))).toBeLessThan(1e-6);
        },
      ),
      { seed: 20_260_102 },
    );
  });

  it("replaces the edit of the same event, leaves the others, and can be reset one by one", () => {
    const edits = [{ name: "onset", time: 1 } as const, { name: "takeoff", time: 1.7 } as const];
    expect(withEdit(edits, takeoff, 1.75)).toEqual([
      { name: "onset", time: 1 },
      { name: "takeoff", time: 1.75 },
    ]);
    expect(withoutEdit(edits, takeoff)).toEqual([{ name: "onset", time: 1 }]);
  });

  it("steps 1 ms with an arrow key, 10 ms with Shift, and not at all with any other modifier", () => {
    const none = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false };
    expect(keyStepSeconds(none)).toBe(0.001);
    expect(keyStepSeconds({ ...none, shiftKey: true })).toBe(0.01);
    for (const other of ["altKey", "ctrlKey", "metaKey"]) {
      expect(keyStepSeconds({ ...none, [other]: true })).toBe(0);
      expect(keyStepSeconds({ ...none, shiftKey: true, [other]: true })).toBe(0);
    }
  });
});

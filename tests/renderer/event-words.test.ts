import { describe, expect, it } from "vitest";
import { clampedWords, noTimeWords, secondsFrom } from "../../renderer/traces/event-words.ts";
import { exampleEvents } from "./example-session.ts";

const takeoff = exampleEvents.find((event) => event.name === "takeoff")!;
const bounds = { earliest: 1.5111, latest: 2.2259 };

describe("a time written by hand", () => {
  it("is understood with a point or a comma, and nothing else is", () => {
    expect(secondsFrom(" 1.76 ")).toBe(1.76);
    expect(secondsFrom("1,76")).toBe(1.76);
    for (const nonsense of ["", "  ", "abc", "1.7.6", "1 s"]) expect(secondsFrom(nonsense)).toBeUndefined();
  });

  it("says why nothing moved where it is no time", () => {
    expect(noTimeWords(takeoff, "abc", 1.76)).toBe("“abc” is no time in seconds, so take-off stays at 1.7600 s.");
    expect(noTimeWords(takeoff, " ", 1.76)).toContain("No time was written");
  });
});

describe("a move that stops short", () => {
  it("says where the event stands and between which times it can stand", () => {
    expect(clampedWords(takeoff, 99, 2.2259, bounds)).toBe(
      "Take-off stops at 2.2259 s: events keep their order, so it can stand from 1.5111 s to 2.2259 s.",
    );
  });

  it("says nothing where the time was only rounded to what is kept", () => {
    expect(clampedWords(takeoff, 1.76004, 1.76, bounds)).toBe("");
  });
});

import { describe, expect, it } from "vitest";
import { clampedWords, eventWords, noTimeWords, secondsFrom } from "../../renderer/traces/event-words.ts";

const bounds = { earliest: 1.5111, latest: 2.2259 };

describe("the name of an event", () => {
  it("is numbered where a test counts its contacts, and a landing's only touchdown is not", () => {
    expect(eventWords({ name: "touchdown", contactIndex: 2 }, "dropJump")).toBe("touchdown 2");
    expect(eventWords({ name: "takeoff", contactIndex: 7 }, "repeatedHops")).toBe("take-off 7");
    expect(eventWords({ name: "touchdown", contactIndex: 1 }, "dropLanding")).toBe("touchdown");
    expect(eventWords({ name: "takeoff" }, "dropJump")).toBe("take-off");
  });
});

describe("a time written by hand", () => {
  it("is understood with a point or a comma, and nothing else is", () => {
    expect(secondsFrom(" 1.76 ")).toBe(1.76);
    expect(secondsFrom("1,76")).toBe(1.76);
    for (const nonsense of ["", "  ", "abc", "1.7.6", "1 s"]) expect(secondsFrom(nonsense)).toBeUndefined();
  });

  it("says why nothing moved where it is no time", () => {
    expect(noTimeWords("take-off", "abc", 1.76)).toBe("“abc” is no time in seconds, so take-off stays at 1.7600 s.");
    expect(noTimeWords("take-off", " ", 1.76)).toContain("No time was written");
  });
});

describe("a move that stops short", () => {
  it("says where the event stands and between which times it can stand", () => {
    expect(clampedWords("take-off", 99, 2.2259, bounds)).toBe(
      "Take-off stops at 2.2259 s: events keep their order, so it can stand from 1.5111 s to 2.2259 s.",
    );
  });

  it("says nothing where the time was only rounded to what is kept", () => {
    expect(clampedWords("take-off", 1.76004, 1.76, bounds)).toBe("");
  });
});

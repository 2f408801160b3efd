import { describe, expect, test } from "vitest";
import { monthsBefore, sinceWords, today } from "../../../renderer/shell/dates.ts";

describe("dates", () => {
  test("months before a date fall on the same day, or on the last one of a shorter month", () => {
    expect(monthsBefore("2026-11-26", 7)).toBe("2026-04-26");
    expect(monthsBefore("2026-03-31", 1)).toBe("2026-02-28");
    expect(monthsBefore("2028-03-31", 1)).toBe("2028-02-29");
    expect(monthsBefore("2026-01-15", 1)).toBe("2025-12-15");
    expect(monthsBefore("2026-01-15", 25)).toBe("2023-12-15");
  });

  test("time between dates is said in the unit a clinician would use", () => {
    expect(sinceWords("2026-11-26", "2026-11-26")).toBe("today");
    expect(sinceWords("2026-11-25", "2026-11-26")).toBe("1 day ago");
    expect(sinceWords("2026-11-01", "2026-11-26")).toBe("3 weeks ago");
    expect(sinceWords("2026-03-12", "2026-10-13")).toBe("7 months ago");
    expect(sinceWords("2026-03-12", "2026-10-11")).toBe("7 months ago");
    expect(sinceWords("2022-03-12", "2026-10-13")).toBe("4 years ago");
    expect(sinceWords("2027-02-11", "2026-11-26")).toBe("in 2.5 months");
  });

  // By hand: days past the whole months, as a part of the month they lie in.
  test.each([
    ["2027-02-11", "11 months ago"], // 10 months and 30 of 31 days
    ["2026-08-27", "5.5 months ago"], // 5 months and 15 of 31 days
    ["2026-08-18", "5 months ago"], // 5 months and 6 of 31 days
    ["2026-09-05", "6 months ago"], // 5 months and 24 of 31 days
    ["2026-05-12", "2 months ago"],
    ["2029-03-12", "3 years ago"],
    ["2029-03-10", "3 years ago"], // two days short of them
    ["2029-02-10", "35 months ago"],
  ])("months since 12 March 2026 are counted to the nearest half: on %s it was %s", (until, words) => {
    expect(sinceWords("2026-03-12", until)).toBe(words);
  });

  test("today is the day on this computer's calendar", () => {
    expect(today(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
  });
});

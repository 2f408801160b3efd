import { describe, expect, test } from "vitest";
import { monthsBefore, sinceWords, today } from "../../../renderer/athletes/dates.ts";

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
    expect(sinceWords("2026-03-12", "2026-10-11")).toBe("6 months ago");
    expect(sinceWords("2022-03-12", "2026-10-13")).toBe("4 years ago");
    expect(sinceWords("2027-02-11", "2026-11-26")).toBe("in 2 months");
  });

  test("today is the day on this computer's calendar", () => {
    expect(today(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
  });
});

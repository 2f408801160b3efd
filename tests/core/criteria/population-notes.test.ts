import { describe, expect, it } from "vitest";
import type { CriteriaPopulation, CriteriaSet } from "../../../core/criteria/criterion.ts";
import { populationNotes } from "../../../core/criteria/population-notes.ts";
import { returnToPivotingSport } from "../../../core/criteria/return-to-pivoting-sport.ts";

const setFor = (population: CriteriaPopulation): CriteriaSet => ({ ...returnToPivotingSport, setFor: population });
const athlete = {
  code: "A-1",
  sex: "female",
  birthYear: 2003,
  sport: "handball, back player",
  level: "league",
} as const;
const date = "2026-10-14";

describe("the population of a set of criteria", () => {
  it("says nothing to an athlete it was set for", () => {
    const population = {
      sex: "female",
      age: { from: 18, to: 35 },
      sports: { name: "court sports", words: ["Handball"] },
      level: "League",
    } as const;
    expect(populationNotes(setFor(population), athlete, date)).toEqual([]);
    expect(populationNotes(returnToPivotingSport, athlete, date)).toEqual([]);
  });

  it("says each mismatch in a sentence of its own", () => {
    const population = {
      sex: "male",
      age: { from: 30, to: 40 },
      sports: { name: "field sports", words: ["rugby"] },
      level: "national team",
    } as const;
    expect(populationNotes(setFor(population), athlete, date)).toEqual([
      "The criteria were set for male athletes; this athlete is female.",
      "The criteria were set for ages 30 to 40; this athlete, born 2003, is outside them.",
      "The criteria were set for field sports; this athlete's sport, handball, back player, is not listed among them.",
      "The criteria were set for the level “national team”; this athlete's is “league”.",
    ]);
  });

  it("leaves open what the year of birth leaves open", () => {
    // By hand: born 2003, in 2026 an athlete is 22 before the birthday and 23 after it.
    const notes = (from: number, to: number) => populationNotes(setFor({ age: { from, to } }), athlete, date);
    expect(notes(23, 35)).toEqual([
      "The criteria were set for ages 23 to 35; this athlete, born 2003, may be outside them.",
    ]);
    expect(notes(22, 23)).toEqual([]);
    expect(notes(24, 35)[0]).toContain("is outside them");
    expect(populationNotes(setFor({ age: { from: 30, to: 40 } }), athlete, undefined)).toEqual([]);
  });

  it("holds nothing against what is not stated", () => {
    const population = { sex: "male", sports: { name: "field sports", words: ["rugby"] }, level: "any" } as const;
    expect(populationNotes(setFor(population), { code: "A-1" }, date)).toEqual([]);
    expect(populationNotes(setFor(population), undefined, date)).toEqual([]);
  });

  it("of the shipped set names sports of cutting and landing", () => {
    expect(populationNotes(returnToPivotingSport, { code: "A-1", sport: "rowing" }, date)).toEqual([
      "The criteria were set for pivoting sports; this athlete's sport, rowing, is not listed among them.",
    ]);
  });
});

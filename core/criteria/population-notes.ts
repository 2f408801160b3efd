import type { SessionDescription } from "../stated/session.ts";
import type { CriteriaPopulation, CriteriaSet } from "./criterion.ts";

type Athlete = NonNullable<SessionDescription["athlete"]>;

/**
 * Where the athlete is not whom a set of criteria was set for: one plain sentence for each mismatch that is known from
 * both. What either leaves open says nothing.
 * @param date of the session (YYYY-MM-DD), for the athlete's age
 */
export function populationNotes(
  set: CriteriaSet,
  athlete: Athlete | undefined,
  date: string | undefined,
): readonly string[] {
  const { setFor } = set;
  if (setFor === undefined || athlete === undefined) return [];
  return [
    sexNote(setFor, athlete),
    ageNote(setFor, athlete, date),
    sportNote(setFor, athlete),
    levelNote(setFor, athlete),
  ].filter((note) => note !== "");
}

function sexNote({ sex }: CriteriaPopulation, athlete: Athlete): string {
  if (sex === undefined || athlete.sex === undefined || sex === athlete.sex) return "";
  return `The criteria were set for ${sex} athletes; this athlete is ${athlete.sex}.`;
}

function ageNote({ age }: CriteriaPopulation, { birthYear }: Athlete, date: string | undefined): string {
  const year = Number(date?.slice(0, 4));
  if (age === undefined || birthYear === undefined || !Number.isFinite(year)) return "";
  // Only the year of birth is known: before the birthday the athlete is a year younger.
  const oldest = year - birthYear;
  const youngest = oldest - 1;
  if (youngest >= age.from && oldest <= age.to) return "";
  const outside = oldest < age.from || youngest > age.to;
  return `The criteria were set for ages ${age.from} to ${age.to}; this athlete, born ${birthYear}, ${outside ? "is" : "may be"} outside them.`;
}

function sportNote({ sports }: CriteriaPopulation, { sport }: Athlete): string {
  if (sports === undefined || sport === undefined || sport.trim() === "") return "";
  const sportInEntry = sport.toLowerCase();
  if (sports.words.some((each) => sportInEntry.includes(each.toLowerCase()))) return "";
  return `The criteria were set for ${sports.name}; this athlete's sport, ${sport.trim()}, is not listed among them.`;
}

function levelNote({ level }: CriteriaPopulation, athlete: Athlete): string {
  if (level === undefined || athlete.level === undefined) return "";
  if (level.trim().toLowerCase() === athlete.level.trim().toLowerCase()) return "";
  return `The criteria were set for the level “${level.trim()}”; this athlete's is “${athlete.level.trim()}”.`;
}

import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { AthleteQuestion, WeightGroup } from "./another-athlete.ts";

/** The place names so many recordings. No setting: it shortens a line. */
const mostNamed = 6;

/** Asks whose recordings these are, with both groups by name (METHODS §2). */
export function anotherAthleteFindings(question: AthleteQuestion | undefined, settings: Settings): readonly Finding[] {
  if (question === undefined) return [];
  const { groups, difference, held } = question;
  const figuresOf = ({ newtons, trials }: WeightGroup) => ({
    trials: trials.length,
    massKg: newtons / settings.gravity,
    files: [...new Set(trials.map(({ file }) => file))],
  });
  return [
    finding(
      "another-athlete",
      "warning",
      {
        groups: [figuresOf(groups[0]), figuresOf(groups[1])],
        differenceFraction: difference,
        ...(held.length > 1 ? {} : { held: held[0] ?? 1 }),
      },
      {
        place: { at: "names", names: groups[1].trials.map(({ file }) => file).slice(0, mostNamed) },
      },
    ),
  ];
}

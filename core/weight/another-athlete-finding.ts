import { type Finding, proseFinding } from "../ground/finding.ts";
import { countOf } from "../ground/plain-words.ts";
import type { Settings } from "../settings/settings.ts";
import type { AthleteQuestion, WeightGroup } from "./another-athlete.ts";

/** A group is named by so many of its recordings. No setting: it shortens a sentence. */
const mostNamed = 6;

/** Asks whose recordings these are, with both groups by name (METHODS §2). */
export function anotherAthleteFindings(question: AthleteQuestion | undefined, settings: Settings): readonly Finding[] {
  if (question === undefined) return [];
  const { groups, difference, held } = question;
  const [larger, smaller] = groups.map((group) => groupWords(group, settings));
  const meanwhile =
    held.length > 1
      ? "all of these are held out of means"
      : `the ${countOf(groups[held[0] ?? 1].trials.length, "trial")} of one group ${groups[held[0] ?? 1].trials.length === 1 ? "is" : "are"} held out of means (${(groups[held[0] ?? 1].newtons / settings.gravity).toFixed(1)} kg)`;
  return [
    proseFinding(
      "another-athlete",
      "warning",
      `Another athlete? ${larger}; ${smaller}: ${(100 * difference).toFixed(1)} % apart, more than one person's weight can be. Until that is answered no weight is pooled, and ${meanwhile}.`,
      "Move the other athlete's recordings to their own session, exclude trials whose weighing is wrong (a hand on a rail), or keep them if all are one person's.",
      {
        where: groups[1].trials
          .map(({ file }) => file)
          .slice(0, mostNamed)
          .join(", "),
      },
    ),
  ];
}

function groupWords({ newtons, trials }: WeightGroup, { gravity }: Settings): string {
  const names = [...new Set(trials.map(({ file }) => file))];
  const named = names.slice(0, mostNamed).join(", ");
  const more = names.length - mostNamed;
  return `${countOf(trials.length, "trial")} ${trials.length === 1 ? "weighs" : "weigh"} ${(newtons / gravity).toFixed(1)} kg (${named}${more > 0 ? ` and ${more} more` : ""})`;
}

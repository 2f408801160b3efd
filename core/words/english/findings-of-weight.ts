import type { WeightFindings } from "../../ground/findings/weight-findings.ts";
import { countOf } from "../../ground/plain-words.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { sourceInWords } from "./file-parts-in-words.ts";

type Group = WeightFindings["another-athlete"]["groups"][number];

/** A group is named by so many of its recordings. No setting: it shortens a sentence. */
const mostNamed = 6;

/** What is said of the findings of `core/weight`. */
export const findingsOfWeight: FindingSentences<WeightFindings> = {
  "another-athlete": ({ groups, differenceFraction, held }) => ({
    message: `Another athlete? ${groups.map(groupWords).join("; ")}: ${(100 * differenceFraction).toFixed(1)} % apart, more than one person's weight can be. Until that is answered no weight is pooled, and ${held === undefined ? "all of these are held out of means" : heldWords(groups[held])}.`,
    action:
      "Move the other athlete's recordings to their own session, exclude trials whose weighing is wrong (a hand on a rail), or keep them if all are one person's.",
  }),
  "weight-differs/entered": ({ massKg, enteredKg }) => ({
    message: `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the entered mass is ${enteredKg.toFixed(1)} kg.`,
    action: "Check the entered mass, the force unit and the plate's zero.",
  }),
  "weight-differs/header": ({ massKg, headerKg, source }) => ({
    message: `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the header says ${headerKg.toFixed(1)} kg (${sourceInWords(source)}).`,
    action: "Check that the file is this athlete's, the force unit and the plate's zero.",
  }),
};

function groupWords({ trials, massKg, files }: Group): string {
  const named = files.slice(0, mostNamed).join(", ");
  const more = files.length - mostNamed;
  return `${countOf(trials, "trial")} ${trials === 1 ? "weighs" : "weigh"} ${massKg.toFixed(1)} kg (${named}${more > 0 ? ` and ${more} more` : ""})`;
}

function heldWords({ trials, massKg }: Group): string {
  return `the ${countOf(trials, "trial")} of one group ${trials === 1 ? "is" : "are"} held out of means (${massKg.toFixed(1)} kg)`;
}

import { type MeasureId, measureEntry, type PlainMeasureId } from "../../ground/measures/catalogue.ts";
import type { MeasureGroup } from "../../ground/measures/measure-entry.ts";
import type { MeasureWords } from "../measure-words.ts";
import { wordsOfLanding } from "./measures-of-landing.ts";
import { wordsOfPhase } from "./measures-of-phase.ts";
import { wordsOfWhole } from "./measures-of-whole.ts";

const plain: Readonly<Record<PlainMeasureId, MeasureWords>> = { ...wordsOfWhole, ...wordsOfPhase, ...wordsOfLanding };

const groupLabels: Readonly<Record<MeasureGroup, string>> = {
  whole: "Whole jump",
  unweighting: "Unweighting",
  braking: "Braking (eccentric)",
  propulsion: "Propulsion (concentric)",
  landing: "Landing",
};

/** Labels that say where they belong without their heading. */
const complete = new Set(["forceAtLowestPosition", "limbTouchdownDifference"]);

/** A form by body size takes its words from the measure it was made from. */
function wordsOf(id: MeasureId): MeasureWords {
  const { formOf } = measureEntry(id);
  // What no other was made from is plain.
  const words = plain[(formOf ?? id) as PlainMeasureId];
  if (formOf === undefined) return words;
  const divisor = id.endsWith("PerBodyMass") ? "body mass" : "body weight";
  return { label: `${words.label}, per ${divisor}`, definition: `${words.definition} Divided by ${divisor}.` };
}

/** How the measures are called and defined. */
export const measures = {
  /** Quantity first, in full words, without the phase when the group says it. */
  label: (id: MeasureId): string => wordsOf(id).label,
  /** The definition in one plain sentence. */
  definition: (id: MeasureId): string => wordsOf(id).definition,
  /** Heading of a group of measures. */
  groupLabel: (group: MeasureGroup): string => groupLabels[group],
  /** The label with its phase, for places where no heading says it: "Impulse in braking, gross", "Duration of braking". */
  fullLabel: (id: MeasureId): string => {
    const { group, formOf } = measureEntry(id);
    const { label } = wordsOf(id);
    if (group === "whole" || complete.has(formOf ?? id)) return label;
    const [head, ...rest] = label.split(",");
    const phased = head === "Duration" ? `${head} of ${group}` : `${head} in ${group}`;
    return [phased, ...rest].join(",");
  },
};

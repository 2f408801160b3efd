import type { InvolvedSide, Limb } from "../../core/ground/limb.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import type { PlateProof } from "../../core/recording/recording.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { words } from "../words/words.ts";

const prose = words.screens.commonWords;

/** "2026-10-14" as "14 Oct 2026"; any other text as it is. */
export function dateWords(isoDate: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(isoDate);
  const month = parts === null ? undefined : prose.monthsOfYear[Number(parts[2]) - 1];
  return parts === null || month === undefined ? isoDate : `${Number(parts[3])} ${month} ${parts[1]}`;
}

/** First letter large, the rest untouched. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The first sentence of a text, for places with room for one. */
export function firstSentence(text: string): string {
  return /^.*?[.!?](?=\s+\p{Lu}|$)/u.exec(text)?.[0] ?? text;
}

/** "Countermovement jump, two legs". */
export function testWords(test: TestKind, legs: "both" | "single"): string {
  return `${sentenceCase(words.tests.label(test))}, ${legsWords(legs)}`;
}

export function legsWords(legs: "both" | "single"): string {
  return legs === "both" ? prose.twoLegs : prose.singleLeg;
}

export function legsOf(limb: Limb): "both" | "single" {
  return limb === "both" ? "both" : "single";
}

export function involvedWords(involved: InvolvedSide | undefined): string {
  switch (involved) {
    case undefined:
      return prose.involvedSideNotStated;
    case "none":
      return prose.nobodyInjuredLeftAgainstRight;
    case "both":
      return prose.bothKneesInvolved;
    default:
      return prose.sideInvolved(involved);
  }
}

/** The injury in words, with the involved side unless the words say it already. */
export function injuryWords({ injury = "", involved }: SessionDescription): string {
  const saysSide = (involved === "left" || involved === "right") && injury.toLowerCase().includes(involved);
  const words = injury.trim().replace(/\.$/, "");
  return [words, saysSide ? "" : involvedWords(involved)].filter((part) => part !== "").join(" · ");
}

/** How it is known which foot stood on a plate. */
export function proofWords(proof: PlateProof): string {
  switch (proof) {
    case "single-leg-trial":
      return prose.provedBySingleLegTrials;
    case "one-leg-standing":
      return prose.provedByStandingOnOne;
    case "layout":
      return prose.takenFromSavedLayout;
    case "stated":
      return prose.statedByTester;
    case "unproved":
      return prose.unproved;
  }
}

/** Name or code of the athlete; a plain sentence when nobody said. */
export function athleteWords(description: SessionDescription): string {
  return description.athlete?.name ?? description.athlete?.code ?? prose.athleteNotStated;
}

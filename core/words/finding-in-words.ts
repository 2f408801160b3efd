import type { Finding } from "../ground/finding.ts";
import type { Told } from "./finding-sentences.ts";
import type { Language } from "./language.ts";

/** A finding as it is read: what was seen, what to do about it, and where it is ("" where it concerns the whole). */
export interface FindingInWords extends Told {
  readonly where: string;
}

/** A finding in a language. */
export function findingInWords({ kind, figures, answers, place }: Finding, language: Language): FindingInWords {
  // A kind and its figures belong together in every finding; the compiler cannot follow that through the table.
  const tell = language.findings[kind] as (figures: Finding["figures"], answers: Finding["answers"]) => Told;
  return { ...tell(figures, answers), where: language.places(place) };
}

/** What was seen and what to do about it, in one line. */
export function tellFinding(finding: Finding, language: Language): string {
  const { message, action } = findingInWords(finding, language);
  return `${message} ${action}`.trim();
}

import type { Finding, Severity } from "../ground/finding.ts";
import type { FindingCode } from "../ground/finding-codes.ts";
import { type FindingInWords, findingInWords } from "./finding-in-words.ts";
import type { Language } from "./language.ts";

/** A finding with its sentences, as documents and the register keep it. */
export interface WrittenFinding extends FindingInWords {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly removes: readonly string[];
}

/** Writes a finding down, its keys in the order of the documents. */
export function writtenFinding(finding: Finding, language: Language): WrittenFinding {
  const { code, severity, removes } = finding;
  const { message, where, action } = findingInWords(finding, language);
  return { code, severity, message, where, removes: [...removes], action };
}

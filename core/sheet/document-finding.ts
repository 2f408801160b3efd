import type { Answer } from "../ground/answer.ts";
import type { Finding } from "../ground/finding.ts";
import { english } from "../words/english.ts";
import { type WrittenFinding, writtenFinding } from "../words/written-finding.ts";

/** A finding in a document: its sentences in English, whatever the language of the screens. */
export interface DocumentFinding extends WrittenFinding {
  /** Statements of which each would settle it. */
  readonly answers: readonly Answer[];
}

/** Writes a finding into a document. */
export function documentFinding(finding: Finding): DocumentFinding {
  return { ...writtenFinding(finding, english), answers: [...finding.answers] };
}

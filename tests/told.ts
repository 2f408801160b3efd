import type { Finding } from "../core/ground/finding.ts";
import { english } from "../core/words/english.ts";
import { type WrittenFinding, writtenFinding } from "../core/words/written-finding.ts";

/** A finding as it reads in English. */
export function told(finding: Finding): WrittenFinding;
export function told(finding: Finding | undefined): WrittenFinding | undefined;
export function told(finding: Finding | undefined): WrittenFinding | undefined {
  return finding === undefined ? undefined : writtenFinding(finding, english);
}

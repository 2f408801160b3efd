import type { Finding } from "../../core/ground/finding.ts";
import { english } from "../../core/words/english.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { answerOptions } from "./answer-options.ts";

/** What was seen, what to do about it, and the options that answer it. */
export function findingWithOptions(finding: Finding): string {
  const { message, action } = findingInWords(finding, english);
  return [message, action, answerOptions(finding.answers)].filter((part) => part !== "").join(" ");
}

/** "warning weighing-short (2.31 s): …", indented under what it belongs to. */
export function findingLine(finding: Finding): string {
  const { where } = findingInWords(finding, english);
  return `  ${finding.severity} ${finding.code}${where === "" ? "" : ` (${where})`}: ${findingWithOptions(finding)}`;
}

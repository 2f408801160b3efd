import type { Finding } from "../../core/ground/finding.ts";
import { sentences, withoutOptions } from "../../core/ground/plain-words.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { words } from "../words/words.ts";
import { AnswerButtons, type AnsweredPlace } from "./answer-buttons.tsx";

interface FindingsListProps {
  readonly findings: readonly Finding[];
  /** What the findings are about, so that they can be answered where they stand; absent for those of a whole session. */
  readonly place?: AnsweredPlace;
}

const prose = words.screens.frame;

/** Findings in words, each with its place and what to do. Warnings and refusals stand out; notes are quiet. */
export function FindingsList({ findings, place }: FindingsListProps) {
  if (findings.length === 0) return null;
  return (
    <ul className="findings">
      {findings.map((each) => (
        <FindingLine key={JSON.stringify(each)} finding={each} place={place} />
      ))}
    </ul>
  );
}

function FindingLine({ finding, place }: { readonly finding: Finding; readonly place: AnsweredPlace | undefined }) {
  const { message, action, where } = findingInWords(finding, words);
  return (
    <li className={finding.severity === "note" ? "finding finding-note" : "finding caution"}>
      {withoutOptions(sentences(message, action))}
      {where !== "" && <span className="finding-where"> ({where})</span>}
      {finding.removes.length > 0 && (
        <span className="finding-where">
          {" "}
          {prose.notMade(finding.removes.map((id) => words.measures.fullLabel(id)).join("; "))}
        </span>
      )}
      {place !== undefined && <AnswerButtons answers={finding.answers} place={place} />}
    </li>
  );
}

/** The findings in the order they matter. */
export function bySeverity(findings: readonly Finding[]): readonly Finding[] {
  const order = ["refusal", "warning", "note"];
  return [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
}

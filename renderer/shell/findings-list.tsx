import type { Finding } from "../../core/ground/finding.ts";
import { fullLabel } from "../../core/ground/measures/catalogue.ts";
import { sentences, withoutOptions } from "../../core/ground/plain-words.ts";

/** Findings in words, each with its place and what to do. Warnings and refusals stand out; notes are quiet. */
export function FindingsList({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null;
  return (
    <ul className="findings">
      {findings.map((each) => (
        <li
          key={`${each.code} ${each.where} ${each.message}`}
          className={each.severity === "note" ? "finding finding-note" : "finding caution"}
        >
          {withoutOptions(sentences(each.message, each.action))}
          {each.where !== "" && <span className="finding-where"> ({each.where})</span>}
          {each.removes.length > 0 && (
            <span className="finding-where">
              {" "}
              Not made because of it: {each.removes.map((id) => fullLabel(id)).join("; ")}.
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The findings in the order they matter. */
export function bySeverity(findings: readonly Finding[]): readonly Finding[] {
  const order = ["refusal", "warning", "note"];
  return [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
}

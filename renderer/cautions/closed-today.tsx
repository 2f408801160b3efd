import type { Gate } from "../../core/gate/gate.ts";
import { wantsAssessment, withoutAssessment } from "../../core/gate/wants-assessment.ts";
import { asSentence } from "../../core/ground/plain-words.ts";
import { AssessmentNow } from "../shell/assessment-now.tsx";
import { dateWords } from "../shell/words.ts";

/** What is closed today, each with its reason, and what a clinician opened; nothing where there is neither. */
export function ClosedToday({ gate }: { readonly gate: Gate }) {
  const { closures, opened } = gate;
  return (
    <>
      {wantsAssessment(closures) && <AssessmentNow />}
      {closures.length > 0 && (
        <div className="caution finding">
          <p>
            <strong>{gate.open ? "Some tests are closed today." : "Every jump test is closed today."}</strong> Values
            are shown; the statuses concerned are withheld.
          </p>
          <ul className="closures">
            {closures.map(({ code, reason }) => (
              <li key={code}>{withoutAssessment(reason)}</li>
            ))}
          </ul>
        </div>
      )}
      {opened.length > 0 && (
        <div>
          <h3 className="small-title">Opened by the treating clinician</h3>
          <ul className="closures">
            {opened.map(({ closure, opening: { by, meant, reason, doctor } }) => (
              <li key={closure.code}>
                {closure.reason} Opened by {by}, {dateWords(meant.slice(0, 10))}: {asSentence(reason)}
                {doctor !== undefined && ` Agreed with ${doctor.name}, ${dateWords(doctor.date)}.`}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

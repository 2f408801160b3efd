import type { Gate } from "../../core/gate/gate.ts";
import { wantsAssessment, withoutAssessment } from "../../core/gate/wants-assessment.ts";
import { asSentence } from "../../core/ground/plain-words.ts";
import { AssessmentNow } from "../shell/assessment-now.tsx";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

/** What is closed today, each with its reason, and what a clinician opened; nothing where there is neither. */
export function ClosedToday({ gate }: { readonly gate: Gate }) {
  const { closures, opened } = gate;
  return (
    <>
      {wantsAssessment(closures) && <AssessmentNow />}
      {closures.length > 0 && (
        <div className="caution finding">
          <p>
            <strong>{gate.open ? prose.someTestsClosed : prose.everyTestClosed}</strong> {prose.statusesWithheld}
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
          <h3 className="small-title">{prose.openedByClinician}</h3>
          <ul className="closures">
            {opened.map(({ closure, opening: { by, meant, reason, doctor } }) => (
              <li key={closure.code}>
                {prose.opened(
                  closure.reason,
                  by,
                  dateWords(meant.slice(0, 10)),
                  asSentence(reason),
                  doctor === undefined ? "" : prose.doctorAgreed(doctor.name, dateWords(doctor.date)),
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

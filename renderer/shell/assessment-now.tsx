import "./assessment-now.css";
import { medicalAssessmentNow } from "../../core/gate/closures.ts";

/** Fever or a wound, pain in the calf or breathlessness: said before and above anything else. */
export function AssessmentNow() {
  return <p className="assessment-now">{medicalAssessmentNow}</p>;
}

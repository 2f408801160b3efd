import type { TrialTrace } from "../../core/analysis.ts";
import type { InvolvedSide } from "../../core/limb.ts";
import type { TrialResult } from "../../core/result.ts";
import { limbRole, limbWords } from "../shell/limb-role.ts";
import { legsOf, proofWords, testWords } from "../shell/words.ts";
import type { ListedTrial } from "./trial-groups.ts";
import { legendNamesWeight, weightText } from "./weight-words.ts";

/** "Countermovement jump, two legs, 2"; the file's name where the test is unknown. */
export function trialTitle({ trial, attempt }: ListedTrial): string {
  if (trial.test === undefined || trial.limb === undefined) return trial.file;
  const limb = trial.limb === "both" ? "" : ` ${trial.limb}`;
  return `${testWords(trial.test, legsOf(trial.limb))}, ${attempt === 0 ? "practice" : attempt}${limb}`;
}

/** Plates, rate, and which foot stood where and how that is known. */
export function trialSubtitle(trial: TrialResult): string {
  const words: string[] = [];
  if (trial.plates.length > 0) words.push(trial.plates.length === 1 ? "one plate" : "two plates");
  if (trial.rate !== undefined) words.push(`${trial.rate} Hz`);
  const ofFeet = trial.plates.filter((plate) => plate.limb !== "both");
  const proofs = [...new Set(ofFeet.map((plate) => proofWords(plate.proof)))];
  // plates named after the feet that stood on them need no more words
  const named = ofFeet.length > 1 && ofFeet.every((plate) => plate.name.toLowerCase().includes(plate.limb));
  const feet = named ? "sides" : ofFeet.map((plate) => `${plate.limb} foot on plate “${plate.name}”`).join(", ");
  const file = trial.file.split("/").at(-1) ?? trial.file;
  return [words.join(", "), `${feet} ${proofs.join(", ")}`.trim(), file].filter((part) => part !== "").join(" · ");
}

/** Which line is which, beside the curve. */
export function TraceLegend({ trace, involved }: { trace: TrialTrace; involved: InvolvedSide | undefined }) {
  const limbs = trace.plates.map((plate) => plate.limb);
  const withTotal = limbs.length > 1 || limbs.includes("both");
  return (
    <p className="legend">
      {limbs
        .filter((limb) => limb !== "both")
        .map((limb) => {
          const role = limbRole(limb, involved);
          return (
            <span key={limb} className={`legend-item limb-${role}`}>
              <span className={`legend-line legend-${role}`} aria-hidden="true" />
              {limbWords(limb, involved)}
            </span>
          );
        })}
      {withTotal && (
        <span className="legend-item">
          <span className="legend-line legend-total" aria-hidden="true" />
          total
        </span>
      )}
      {legendNamesWeight(trace.trial) && trace.trial.weight !== undefined && (
        <span className="legend-item muted">
          <span className="legend-line legend-weight" aria-hidden="true" />
          body weight {weightText(trace.trial.weight)}
        </span>
      )}
    </p>
  );
}

import type { InvolvedSide } from "../../core/ground/limb.ts";
import { trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { bearerRole, bearerWords, plateBearer } from "../shell/limb-role.ts";
import { legsOf, proofWords, testWords } from "../shell/words.ts";
import { words } from "../words/words.ts";
import type { ListedTrial } from "./trial-groups.ts";
import { legendNamesWeight, weightText } from "./weight-words.ts";

const prose = words.screens.traces;

/** "Countermovement jump, two legs, 2"; the file's name where the test is unknown. */
export function trialTitle({ trial, attempt }: ListedTrial): string {
  if (trial.test === undefined || trial.limb === undefined) return trial.file;
  const bearer = trialBearer(trial) ?? { side: trial.limb };
  const limb = bearer.side === "both" ? "" : ` ${words.limbs.bearer(bearer)}`;
  return `${testWords(trial.test, legsOf(trial.limb))}, ${attempt === 0 ? "practice" : attempt}${limb}`;
}

/** Plates, rate, and which foot stood where and how that is known. */
export function trialSubtitle(trial: TrialResult): string {
  const parts: string[] = [];
  if (trial.plates.length > 0) parts.push(trial.plates.length === 1 ? prose.onePlate : prose.twoPlates);
  if (trial.rate !== undefined) parts.push(prose.hertz(trial.rate));
  const ofFeet = trial.plates.filter((plate) => plate.limb !== "both");
  const proofs = [...new Set(ofFeet.map((plate) => proofWords(plate.proof)))];
  // plates named after the feet that stood on them need no more words
  const named = ofFeet.length > 1 && ofFeet.every((plate) => plate.name.toLowerCase().includes(plate.limb));
  const sided = ofFeet.every((plate) => plate.proof !== "unproved") && trial.feet === undefined;
  const feet = named ? "sides" : ofFeet.map((plate) => prose.footOnPlate(plate.limb, plate.name)).join(", ");
  if (!sided) {
    const names = trial.plates
      .map((plate, index) => prose.plateIs(words.limbs.plate(index + 1), plate.name))
      .join(", ");
    return [parts.join(", "), prose.feetAre(names, trial.feet ?? prose.unproved), fileName(trial)].join(" · ");
  }
  return [parts.join(", "), `${feet} ${proofs.join(", ")}`.trim(), fileName(trial)]
    .filter((part) => part !== "")
    .join(" · ");
}

function fileName({ file }: TrialResult): string {
  return file.split("/").at(-1) ?? file;
}

/** Which line is which, beside the curve. */
export function TraceLegend({ trace, involved }: { trace: TrialTrace; involved: InvolvedSide | undefined }) {
  const bearers = trace.plates.map((_, index) => plateBearer(trace.trial, index));
  const withTotal = bearers.length > 1 || bearers.some(({ side }) => side === "both");
  return (
    <p className="legend">
      {bearers
        .filter(({ side }) => side !== "both")
        .map((bearer) => {
          const role = bearerRole(bearer, involved);
          return (
            <span key={role} className={`legend-item limb-${role}`}>
              <span className={`legend-line legend-${role}`} aria-hidden="true" />
              {bearerWords(bearer, involved)}
            </span>
          );
        })}
      {withTotal && (
        <span className="legend-item">
          <span className="legend-line legend-total" aria-hidden="true" />
          {prose.total}
        </span>
      )}
      {legendNamesWeight(trace.trial) && trace.trial.weight !== undefined && (
        <span className="legend-item muted">
          <span className="legend-line legend-weight" aria-hidden="true" />
          {prose.bodyWeight(weightText(trace.trial.weight))}
        </span>
      )}
    </p>
  );
}

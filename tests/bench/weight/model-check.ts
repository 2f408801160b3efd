import { defaultSettings } from "../../../core/settings/settings.ts";
import { createRandom } from "../../../core/simulate/random.ts";
import { gainDifference } from "../../../core/weight/plate-gains.ts";
import { SessionModel } from "../../../core/weight/session-model.ts";

/** Standard uncertainty of each synthetic weighing, as a part: one second of quiet standing. */
const weighingUncertainty = 0.0002;

/** Draws sessions of one-leg weighings on two plates and holds the gain found against the one drawn. */
export function modelCheck(left: number, right: number, trueScatter: number, sessions: number) {
  const random = createRandom(31);
  const uncertainties: number[] = [];
  let within = 0;
  for (let session = 0; session < sessions; session += 1) {
    const gains = [1, 2].map(() => defaultSettings.plateGainTolerance * random.normal());
    const rows = [...new Array<0 | 1>(left).fill(0), ...new Array<0 | 1>(right).fill(1)].map((plate) => ({
      logWeight: Math.log(720) + gains[plate]! + Math.hypot(trueScatter, weighingUncertainty) * random.normal(),
      uncertainty: weighingUncertainty,
      shares: plate === 0 ? [1, 0] : [0, 1],
      scatters: true,
    }));
    const posterior = new SessionModel(rows, 2, defaultSettings).gains();
    const apart = gainDifference(
      { ...posterior, plates: ["a", "b"], from: [], priorSd: defaultSettings.plateGainTolerance },
      new Map([
        ["a", 1],
        ["b", -1],
      ]),
    );
    if (apart === undefined) throw new Error("Two plates were compared.");
    uncertainties.push(apart.uncertainty);
    if (Math.abs(apart.difference - (gains[0]! - gains[1]!)) <= 1.96 * apart.uncertainty) within += 1;
  }
  const sorted = uncertainties.toSorted((a, b) => a - b);
  return { sessions, medianUncertainty: sorted[sessions >> 1] ?? Number.NaN, coverage: within / sessions };
}

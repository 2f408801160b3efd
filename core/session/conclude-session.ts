import { evaluateCriteria } from "../criteria/evaluate-criteria.ts";
import { kneeRows } from "../criteria/knee-rows.ts";
import { returnToPivotingSport } from "../criteria/return-to-pivoting-sport.ts";
import { gateOf } from "../gate/gate.ts";
import { withStatedCautions } from "../gate/stated-cautions.ts";
import { trialsAllowed } from "../protocol/protocol-progress.ts";
import { withStricterLandings } from "../protocol/stricter-landings.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import { compareSides } from "../sides/compare-sides.ts";
import { dropHeightFindings } from "../sides/drop-height-legs.ts";
import { platesDisagree } from "../sides/plates-disagree.ts";
import { anotherAthleteFindings } from "../weight/another-athlete-finding.ts";
import { plateDifferences } from "../weight/plate-gains.ts";
import type { SessionWeighing } from "../weight/session-weighing.ts";
import { holdDiffering } from "./hold-differing.ts";
import { massSinceLast } from "./mass-since-last.ts";
import { proveTrialPlates, type WitnessedTrial } from "./prove-trial-plates.ts";
import { unusedEntries, unusedKept } from "./session-entries.ts";
import type { SessionStatements, UnreadableFile } from "./session-input.ts";
import { unreadableTrial } from "./unreadable-trial.ts";

/** What became of a session's files. */
export interface SessionTrials {
  readonly analyzed: readonly WitnessedTrial[];
  /** What they say about body weight together. */
  readonly weighing: SessionWeighing;
  readonly unreadable: readonly UnreadableFile[];
  /** Copies of recordings that are there already, as refused trials. */
  readonly repeated: readonly TrialResult[];
}

/** The analysed trials of a session become its result: plates proved, sides compared, criteria evaluated. */
export function concludeSession(session: SessionStatements, files: SessionTrials, settings: Settings): SessionResult {
  const { description, stated, folder, descriptionFindings } = session;

  // Trials whose weight differs are held; single-leg trials prove which foot stood on which plate.
  const proved = proveTrialPlates(holdDiffering(files.analyzed, files.weighing, settings), description);
  const trials = [...proved.trials, ...files.unreadable.map(unreadableTrial), ...files.repeated].sort(byFileAndNumber);

  // Measures of two sides give comparisons; comparisons meet criteria, where the gate is open.
  const involved = stated.involved ?? description.involved;
  const known = involved === undefined ? description : { ...description, involved };
  const gate = gateOf(withStatedCautions(known, stated), settings, descriptionFindings, trials);
  const comparisons =
    involved === undefined
      ? []
      : compareSides({ involved, trials: proved.comparable, gains: files.weighing.gains }, settings);
  const { references = [], protocol } = description;
  const allowing = protocol && withStricterLandings(protocol, gate.limits);
  const criteria =
    involved === undefined
      ? []
      : evaluateCriteria(
          returnToPivotingSport,
          {
            comparisons,
            involved,
            references,
            gate,
            trials: proved.comparable,
            ...(allowing === undefined
              ? {}
              : {
                  trialsAllowed: (asked, limb) =>
                    trialsAllowed(allowing, asked, limb, { trials, description: { involved } }),
                }),
            ...(description.otherInjuries && { otherInjuries: description.otherInjuries }),
          },
          settings,
        );

  const differences = plateDifferences(files.weighing.gains);
  return {
    folder,
    description: withStatedCautions(known, stated),
    gravity: settings.gravity,
    trials,
    comparisons,
    criteriaSet: returnToPivotingSport,
    criteria,
    gate,
    knee: kneeRows(gate, involved),
    ...(differences.length === 0 ? {} : { plateDifferences: differences }),
    ...(files.weighing.question === undefined ? {} : { athleteQuestion: files.weighing.question }),
    findings: [
      ...descriptionFindings,
      ...unusedEntries(description, trials),
      ...unusedKept(stated.keep, trials),
      ...proved.findings,
      ...massSinceLast(description, session.earlierMass, trials, settings),
      ...anotherAthleteFindings(files.weighing.question, settings),
      ...platesDisagree(files.weighing.gains, comparisons, settings),
      ...dropHeightFindings(proved.comparable, settings),
    ],
  };
}

function byFileAndNumber(
  a: { readonly file: string; readonly trial: number },
  b: { readonly file: string; readonly trial: number },
): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.trial - b.trial;
}

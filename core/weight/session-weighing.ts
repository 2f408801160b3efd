import { trialKey } from "../ground/trial-key.ts";
import type { Settings } from "../settings/settings.ts";
import { type AthleteQuestion, anotherAthlete } from "./another-athlete.ts";
import {
  consistentRows,
  differenceFrom,
  isDifferent,
  modelRow,
  sharesOn,
  type WeightDifference,
} from "./consistent-weighings.ts";
import { gainsUnknown, type PlateGains } from "./plate-gains.ts";
import { type LogPrediction, type ModelRow, SessionModel } from "./session-model.ts";
import { hasOwn, type OwnWeighing, type TrialName, type WeighedTrial } from "./weighed-trial.ts";

/** Body weight that a session's other trials give to a trial which cannot be weighed itself. */
export interface WeightPrediction {
  /** As the trial's own plates read it. */
  readonly newtons: number;
  /** Standard uncertainty with the scatter between trials and the plates' gains, newtons. */
  readonly uncertainty: number;
  /** Weighings it is made from. */
  readonly trials: number;
  /** True where one of them stood on the same set of plates. */
  readonly samePlates: boolean;
}

/** A trial whose own weight differs from what the others say. */
export interface DifferingWeight extends TrialName, WeightDifference {
  /** Weighings it was held against. */
  readonly trials: number;
}

/** What the trials of a session say about body weight together (METHODS §2). */
export interface SessionWeighing {
  /** For trials that cannot be weighed themselves, by `trialKey`; none while it is asked whose weights these are. */
  readonly predictions: Readonly<Record<string, WeightPrediction>>;
  /**
   * Of standing after a landing that may not be the whole body at rest, by `trialKey`: whether it agrees with the other
   * trials. Absent where there was none to hold it against.
   */
  readonly borneOut: Readonly<Record<string, boolean>>;
  /** Why no weight is pooled, a clause that follows "because"; absent where one may be. */
  readonly notPooled?: string;
  readonly differing: readonly DifferingWeight[];
  readonly gains: PlateGains;
  readonly question?: AthleteQuestion;
}

/** What a trial's own weight depends on beside its recording. */
export type TrialWeightContext = Pick<SessionWeighing, "predictions" | "borneOut" | "notPooled">;

/** A trial analysed alone: no other says anything. */
export const noOtherTrials: TrialWeightContext = { predictions: {}, borneOut: {} };

/**
 * Body weight over a session: who differs, what the plates read against each other, whether one person can have these
 * weights, and the weight of the trials that have no standing of their own. Sound weighings are compared, never replaced.
 * @param enteredNewtons weight of an entered body mass
 */
export function weighSession(
  trials: readonly WeighedTrial[],
  enteredNewtons: number | undefined,
  settings: Settings,
): SessionWeighing {
  const plates = [...new Set(trials.flatMap(({ shares }) => shares.map(({ plate }) => plate)))].sort();
  const owned = trials.filter(hasOwn).filter((trial) => !trial.excluded);
  const witnesses = witnessesAmong(owned);
  const rows = witnesses.map((trial) => modelRow(trial, plates));
  const entered = enteredNewtons === undefined ? [] : [enteredRow(enteredNewtons, plates.length, settings)];
  const chosen = agreeing(rows, entered, plates.length, settings);
  const agreed = chosen.map((index) => rows[index]!);
  const model = agreed.length === 0 ? undefined : modelOf(agreed, entered, plates.length, settings);
  const gains: PlateGains =
    model === undefined
      ? gainsUnknown(settings)
      : {
          plates,
          from: chosen.map((index) => nameOf(witnesses[index]!)),
          priorSd: settings.plateGainTolerance,
          ...model.gains(),
        };

  // Each own weighing against all others; where no majority agrees, against every other one.
  const compared = model ?? (rows.length < 2 ? undefined : new SessionModel(rows, plates.length, settings));
  const places = model === undefined ? rows.map((_, index) => index) : chosen;
  const placeOf = new Map(places.map((at, place) => [witnesses[at], place]));
  const differences = owned.flatMap((trial) => {
    const place = placeOf.get(trial) ?? -1;
    const others = places.length - (place < 0 ? 0 : 1);
    if (compared === undefined || others === 0) return [];
    const row = modelRow(trial, plates);
    const predicted = place < 0 ? compared.predict(row.shares) : compared.predictLeavingOut(place);
    return [{ trial, trials: others, ...differenceFrom(row, predicted) }];
  });
  const differing = differences.filter((each) => isDifferent(each, settings));
  const isInDoubt = ({ trial }: { readonly trial: OwnWeighing }): boolean => trial.doubtful || trial.otherFoot;
  const contradicted = new Set(differing.filter(isInDoubt).map(({ trial }) => trial));

  const alike = alikeAmong([...contradicted], settings);
  const people = [...owned.filter((trial) => !contradicted.has(trial)), ...alike];
  const question = anotherAthlete(people, gains, enteredNewtons, settings);
  const unborne =
    question === undefined ? contradicted : new Set([...contradicted].filter((each) => !alike.includes(each)));
  const notPooled =
    question === undefined
      ? witnesses.length > 0 && model === undefined
        ? "the weights of the session disagree"
        : undefined
      : "the weights of the session are not one person's";
  const needing = trials.filter((trial) => !hasOwn(trial) || unborne.has(trial));
  const from = places.map((at) => witnesses[at]!);
  const plateSets = new Set(from.map(plateSetOf));
  return {
    predictions:
      model === undefined || question !== undefined
        ? {}
        : Object.fromEntries(
            needing.map((trial) => [
              trialKey(trial.file, trial.trial),
              predictionFor(
                model.predict(sharesOn(trial.shares, plates)),
                from.length,
                plateSets.has(plateSetOf(trial)),
              ),
            ]),
          ),
    borneOut: Object.fromEntries(
      differences.filter(isInDoubt).map(({ trial }) => [trialKey(trial.file, trial.trial), !unborne.has(trial)]),
    ),
    ...(notPooled === undefined ? {} : { notPooled }),
    differing: differing
      .filter(({ trial }) => !unborne.has(trial))
      .map(({ trial: { file, trial }, ...rest }) => ({ file, trial, ...rest })),
    gains,
    ...(question === undefined ? {} : { question }),
  };
}

/** Whose weighing may speak for the session: sound ones; doubtful ones only where there are no others. */
function witnessesAmong(owned: readonly OwnWeighing[]): readonly OwnWeighing[] {
  const alone = owned.filter((trial) => !trial.otherFoot);
  const sound = alone.filter((trial) => !trial.doubtful);
  return sound.length > 0 ? sound : alone;
}

function enteredRow(newtons: number, plates: number, settings: Settings): ModelRow {
  return {
    logWeight: Math.log(newtons),
    uncertainty: (settings.enteredMassUncertaintyKg * settings.gravity) / newtons,
    shares: new Array<number>(plates).fill(0),
    scatters: false,
  };
}

/** Positions of the weighings that agree; where no majority does, of those an entered mass bears out. */
function agreeing(
  rows: readonly ModelRow[],
  entered: readonly ModelRow[],
  plates: number,
  settings: Settings,
): readonly number[] {
  const majority = consistentRows(rows, plates, settings);
  const [enteredRow] = entered;
  if (majority.length > 0 || enteredRow === undefined) return majority;
  const borne = rows.flatMap((row, index) => (isFar(row, enteredRow, settings) ? [] : [index]));
  if (borne.length === rows.length) return [];
  const among = consistentRows(
    borne.map((index) => rows[index]!),
    plates,
    settings,
  );
  return among.map((index) => borne[index]!);
}

function isFar(row: ModelRow, entered: ModelRow, settings: Settings): boolean {
  const joint = Math.hypot(row.uncertainty, entered.uncertainty, settings.plateGainTolerance);
  return Math.abs(row.logWeight - entered.logWeight) > settings.weightDiffersSd * joint;
}

/** The model of the weighings that agree, with an entered mass that does not contradict them. */
function modelOf(
  rows: readonly ModelRow[],
  entered: readonly ModelRow[],
  plates: number,
  settings: Settings,
): SessionModel {
  const alone = new SessionModel(rows, plates, settings);
  const [said] = entered;
  if (said === undefined) return alone;
  const compared = differenceFrom(said, alone.predict(said.shares));
  return isDifferent(compared, settings) ? alone : new SessionModel([...rows, said], plates, settings);
}

/**
 * Standing after a landing that the session does not bear out is most often a foot beside the plate, which takes a
 * different part each time. Two that agree with each other are a person's weight.
 */
function alikeAmong(unborne: readonly OwnWeighing[], settings: Settings): readonly OwnWeighing[] {
  return unborne.filter((trial) =>
    unborne.some((other) => {
      if (other === trial) return false;
      const [first, second] = [trial.own, other.own];
      const joint = Math.hypot(
        first.uncertainty / first.newtons,
        second.uncertainty / second.newtons,
        Math.SQRT2 * settings.weightScatterTypical,
      );
      return Math.abs(Math.log(first.newtons / second.newtons)) <= settings.weightDiffersSd * joint;
    }),
  );
}

function nameOf({ file, trial }: TrialName): TrialName {
  return { file, trial };
}

function predictionFor(predicted: LogPrediction, trials: number, samePlates: boolean): WeightPrediction {
  const newtons = Math.exp(predicted.logWeight);
  return { newtons, uncertainty: newtons * Math.sqrt(predicted.variance), trials, samePlates };
}

function plateSetOf({ shares }: WeighedTrial): string {
  return shares
    .map(({ plate }) => plate)
    .sort()
    .join("\n");
}

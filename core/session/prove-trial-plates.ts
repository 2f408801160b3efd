import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Side } from "../ground/limb.ts";
import type { FeetInDoubt } from "../recording/recording.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { ComparableTrial } from "../sides/comparable-trial.ts";
import {
  contradictionAction,
  type FeetAnswered,
  feetAnswered,
  footAgainstLimb,
  isContradictedPlate,
  type PlateProofs,
  type PlateTrial,
  plateProof,
  provePlates,
} from "../sides/plate-proof.ts";
import type { SessionDescription } from "../stated/session.ts";
import { type OneLegStanding, oneLegStanding } from "../trial/one-leg-standing.ts";
import { inPlateWords } from "../words/english/plate-words.ts";
import { platesOfFile } from "./read-session-recording.ts";
import type { TrialDraft } from "./trial-draft.ts";
import { withoutSides } from "./without-sides.ts";

/** Trials with the proof of their plates settled. */
export interface ProvedTrials {
  readonly trials: readonly TrialResult[];
  readonly comparable: readonly ComparableTrial[];
  readonly findings: readonly Finding[];
}

/** What a trial's recording says about which foot stood where, beside its result; small, and free of curves. */
export interface PlateEvidence {
  /** The plate that alone carried the push, on two plates. */
  readonly loadedPlate?: string;
  /** True when only the loaded plate told the limb: it then says nothing about the plates. */
  readonly limbFromPlates: boolean;
  /** Standing on one stated leg in a recording that holds nothing else. */
  readonly standing?: OneLegStanding;
}

/** A trial's result with what its recording says about the plates. */
export interface WitnessedTrial {
  readonly result: TrialResult;
  readonly evidence: PlateEvidence;
}

/** Gathers what a drafted trial can say about the plates. */
export function plateEvidence(draft: TrialDraft, settings: Settings): PlateEvidence {
  const { loadedPlate, limbFromPlates } = draft;
  const standing = standingOf(draft, settings);
  return {
    limbFromPlates,
    ...(loadedPlate === undefined ? {} : { loadedPlate }),
    ...(standing === undefined ? {} : { standing }),
  };
}

/**
 * Lets the session's single-leg trials bear out or contradict which foot stood on which plate (METHODS §8). A trial
 * whose feet are in doubt says so and is told by plate, without sides.
 */
export function proveTrialPlates(analyzed: readonly WitnessedTrial[], description: SessionDescription): ProvedTrials {
  const all = analyzed.map((each) => witness(each, description));
  const counted = all.filter((_, at) => mayBearWitness(analyzed[at]!));
  const proofs = provePlates(counted);
  const answers = feetAnswered(counted);
  const trials: TrialResult[] = [];
  const comparable: ComparableTrial[] = [];
  for (const [at, { result: asAnalysed, evidence }] of analyzed.entries()) {
    const plates = asAnalysed.plates.map((plate) => ({ ...plate, proof: plateProof(proofs, plate) }));
    const result = { ...asAnalysed, plates };
    const doubt = result.status === "refused" ? undefined : feetInDoubt(result, evidence, all[at]!, answers, proofs);
    const told = doubt === undefined ? result : withoutSides(result, plateOfSide(result, evidence), doubt);
    const { standing } = evidence;
    trials.push(standing === undefined ? told : { ...told, findings: [...told.findings, stoodOn(standing, result)] });
    if (result.status === "refused" || result.practice === true) continue;
    if (result.test === undefined || result.limb === undefined) continue;
    const loadedPlate = placeOf(plates, evidence.loadedPlate);
    comparable.push({
      test: result.test,
      limb: result.limb,
      measures: result.measures,
      excluded: !countsInMeans(result),
      ...(doubt === undefined ? {} : { feet: doubt.feet }),
      plateLimbs: plates.map((plate) => plate.limb),
      ...(loadedPlate === undefined ? {} : { loadedPlate }),
      ...carriersOf(result, evidence),
      ...(result.dropHeightMetres === undefined ? {} : { dropHeightMetres: result.dropHeightMetres }),
      ...(result.leadingLeg === undefined ? {} : { leadingLeg: result.leadingLeg }),
    });
  }
  return { trials, comparable, findings: proofs.findings };
}

/** Trials that are not refused, and standing on one leg; none that a person excluded. */
function mayBearWitness({ result, evidence }: WitnessedTrial): boolean {
  return (result.status !== "refused" || evidence.standing !== undefined) && result.excluded === undefined;
}

/** Why it is not known in a trial which foot stood where, with the finding that says so; undefined where it is. */
function feetInDoubt(
  { limb, plates }: TrialResult,
  { loadedPlate, limbFromPlates }: PlateEvidence,
  asWitness: PlateTrial,
  answers: FeetAnswered,
  proofs: PlateProofs,
): { readonly feet: FeetInDoubt; readonly finding: Finding } | undefined {
  if (limb === undefined || plates.length !== 2) return undefined;
  const isContradicted = plates.some((plate) => isContradictedPlate(proofs, plate));
  if (limb === "both") {
    if (plates.every((plate) => plate.limb === "both" || plate.proof !== "unproved")) return undefined;
    return isContradicted
      ? { feet: "contradicted", finding: layoutContradicted }
      : { feet: "unproved", finding: layoutUnproved };
  }
  const loaded = plates.find((plate) => plate.name === loadedPlate);
  if (loaded === undefined || loaded.limb === "both") return undefined;
  if (limbFromPlates) {
    if (loaded.proof !== "unproved") return undefined;
    return isContradicted
      ? { feet: "contradicted", finding: layoutContradicted }
      : { feet: "unproved", finding: limbUnproved };
  }
  const foot = footAgainstLimb(asWitness, answers);
  if (foot === undefined) return undefined;
  return { feet: "contradicted", finding: limbContradicted(limb, foot, placeOf(plates, loadedPlate)) };
}

/** The place from 1 of the plate that a side's values were made on. */
function plateOfSide({ limb, plates }: TrialResult, { loadedPlate }: PlateEvidence): (side: Side) => number {
  return (side) =>
    limb === "both" ? plates.findIndex((plate) => plate.limb === side) + 1 : (placeOf(plates, loadedPlate) ?? 0);
}

function placeOf(plates: TrialResult["plates"], name: string | undefined): number | undefined {
  const at = plates.findIndex((plate) => plate.name === name);
  return at < 0 ? undefined : at + 1;
}

/** The plate under each limb: on two legs by the plates' feet, on one leg the plate that carried the push. */
function carriersOf({ limb, plates }: TrialResult, { loadedPlate }: PlateEvidence): Pick<ComparableTrial, "carriedBy"> {
  if (limb !== "both") {
    const plate = loadedPlate ?? (plates.length === 1 ? plates[0]?.name : undefined);
    return plate === undefined || limb === undefined ? {} : { carriedBy: { [limb]: plate } };
  }
  const under = plates.flatMap(({ name, limb: foot }) => (foot === "both" ? [] : [[foot, name] as const]));
  return under.length === 0 ? {} : { carriedBy: Object.fromEntries(under) };
}

function witness({ result, evidence }: WitnessedTrial, description: SessionDescription): PlateTrial {
  const { standing, limbFromPlates } = evidence;
  const loadedPlate = standing?.plate ?? evidence.loadedPlate;
  return {
    file: result.file,
    trial: result.trial,
    // A limb that was read off the plates says nothing about them.
    limb: limbFromPlates ? "both" : (result.limb ?? "both"),
    plates: result.plates,
    statedAlone: platesOfFile(description, result.file).length > 0,
    standing: standing !== undefined,
    ...(loadedPlate === undefined ? {} : { loadedPlate }),
  };
}

/** Standing on one stated leg in a recording that holds nothing else: no jump, and nothing wrong with it. */
function standingOf(draft: TrialDraft, settings: Settings): OneLegStanding | undefined {
  const { prepared, cut, limb, findings } = draft;
  if (prepared === undefined || cut !== undefined || limb === undefined || limb === "both") return undefined;
  const wrong = findings.some((each) => each.severity === "refusal" && each.code !== "no-takeoff");
  return wrong ? undefined : oneLegStanding(prepared, settings);
}

function stoodOn({ plate, span }: OneLegStanding, { limb, rate = Number.NaN }: TrialResult): Finding {
  const where = `${(span.start / rate).toFixed(2)} s to ${(span.end / rate).toFixed(2)} s`;
  return proseFinding(
    "one-leg-standing",
    "note",
    `Standing on the ${limb} leg from ${where} shows which foot stood on ${inPlateWords(plate)}.`,
    "State the other limb if it was the other leg.",
    { where },
  );
}

const layoutUnproved = proseFinding(
  "plates-unproved",
  "warning",
  "Nothing proves which foot stood on which plate (the columns' names alone do not), so values are those of plate 1 and plate 2.",
  "Say which foot stood on which plate (--columns left=…,right=…, or plates in session.json), or record a single-leg trial on the same plates.",
);

const limbUnproved = proseFinding(
  "plates-unproved",
  "warning",
  "Only the name of the loaded plate says which leg jumped, and nothing proves which foot stood on it, so values carry the plate and no side.",
  "Say which leg jumped (--limb left or right, or limb in session.json), or which foot stood on which plate.",
);

const layoutContradicted = proseFinding(
  "plates-contradict",
  "warning",
  "Single-leg trials contradict which foot stood on which plate, so values are those of plate 1 and plate 2.",
  contradictionAction,
);

function limbContradicted(limb: Side, foot: Side, plate: number | undefined): Finding {
  return proseFinding(
    "plates-contradict",
    "warning",
    `The ${limb} leg is said to have jumped, but only plate ${plate} was loaded, and that is said to be the ${foot} foot's: values carry the plate and no side.`,
    contradictionAction,
    { where: `plate ${plate}` },
  );
}

import type { TrialDraft } from "./draft-trials.ts";
import { type Finding, finding } from "./finding.ts";
import { platesOfFile } from "./read-session-recording.ts";
import type { PlateProof } from "./recording/recording.ts";
import type { TrialResult } from "./result.ts";
import type { SessionDescription } from "./session.ts";
import type { Settings } from "./settings.ts";
import type { ComparableTrial } from "./sides/comparison.ts";
import { contradictionAction, type PlateTrial, plateProof, provePlates } from "./sides/plate-proof.ts";
import { type OneLegStanding, oneLegStanding } from "./trial/one-leg-standing.ts";
import { countsInMeans } from "./weight/held-trial.ts";

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
 * Lets the session's single-leg trials bear out or contradict which foot stood on which plate (METHODS §8), and says
 * on each two-leg trial when it stays unproved.
 */
export function proveTrialPlates(analyzed: readonly WitnessedTrial[], description: SessionDescription): ProvedTrials {
  const counted = analyzed.flatMap((each) =>
    (each.result.status === "refused" && each.evidence.standing === undefined) || each.result.excluded !== undefined
      ? []
      : [witness(each, description)],
  );
  const proofs = provePlates(counted);
  const contradicted = (name: string, limb: string): boolean =>
    proofs.plates.some((each) => each.name === name && each.limb === limb && each.verdict === "contradicted");
  const trials: TrialResult[] = [];
  const comparable: ComparableTrial[] = [];
  for (const { result, evidence } of analyzed) {
    const plates = result.plates.map((plate) => ({ ...plate, proof: plateProof(proofs, plate) }));
    const twoLegs = result.limb === "both" && plates.length === 2;
    const platesContradicted = plates.some((plate) => contradicted(plate.name, plate.limb));
    const proof = weakest(plates.map((plate) => plate.proof));
    const findings =
      twoLegs && result.status !== "refused" && proof === "unproved"
        ? [...result.findings, unproved(platesContradicted)]
        : result.findings;
    const { standing } = evidence;
    trials.push({
      ...result,
      plates,
      findings: standing === undefined ? findings : [...findings, stoodOn(standing, result)],
    });
    if (result.status === "refused" || result.practice === true) continue;
    if (result.test === undefined || result.limb === undefined) continue;
    comparable.push({
      test: result.test,
      limb: result.limb,
      measures: result.measures,
      excluded: !countsInMeans(result),
      proof,
      platesContradicted,
      ...carriersOf(result, evidence),
      ...(result.dropHeightMetres === undefined ? {} : { dropHeightMetres: result.dropHeightMetres }),
      ...(result.leadingLeg === undefined ? {} : { leadingLeg: result.leadingLeg }),
    });
  }
  return { trials, comparable, findings: proofs.findings };
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
  return finding(
    "one-leg-standing",
    "note",
    `Standing on the ${limb} leg from ${where} shows which foot stood on plate ${plate}.`,
    "State the other limb if it was the other leg.",
    { where },
  );
}

function weakest(proofs: readonly PlateProof[]): PlateProof {
  return proofs.includes("unproved") ? "unproved" : (proofs[0] ?? "unproved");
}

function unproved(contradicted: boolean): Finding {
  return finding(
    contradicted ? "plates-contradict" : "plates-unproved",
    "warning",
    contradicted
      ? "Single-leg trials contradict which foot stood on which plate, so this trial's left and right are in doubt."
      : "Nothing proves which foot stood on which plate: the columns' names alone do not.",
    contradicted
      ? contradictionAction
      : "State the plate of each foot in session.json or by --columns, or record a single-leg trial on the same plates.",
  );
}

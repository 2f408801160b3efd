import type { AnalyzedTrial } from "./analyze-trial.ts";
import type { TrialDraft } from "./draft-trials.ts";
import { type Finding, finding } from "./finding.ts";
import { platesOfFile } from "./read-session-recording.ts";
import type { PlateProof } from "./recording/recording.ts";
import type { TrialResult } from "./result.ts";
import type { SessionDescription } from "./session.ts";
import type { ComparableTrial } from "./sides/comparison.ts";
import { type PlateTrial, plateProof, provePlates } from "./sides/plate-proof.ts";

/** Trials with the proof of their plates settled. */
export interface ProvedTrials {
  readonly trials: readonly TrialResult[];
  readonly comparable: readonly ComparableTrial[];
  readonly findings: readonly Finding[];
}

/**
 * Lets the session's single-leg trials bear out or contradict which foot stood on which plate (METHODS §8), and says
 * on each two-leg trial when it stays unproved. `drafts` and `analyzed` are in the same order.
 */
export function proveTrialPlates(
  analyzed: readonly AnalyzedTrial[],
  drafts: readonly TrialDraft[],
  description: SessionDescription,
): ProvedTrials {
  const witnesses = analyzed.map(({ result }, index) => witness(result, drafts[index], description));
  const counted = analyzed.flatMap(({ result }, index) =>
    result.status === "refused" || result.excluded !== undefined ? [] : [witnesses[index]!],
  );
  const proofs = provePlates(counted);
  const contradicted = (name: string, limb: string): boolean =>
    proofs.plates.some((each) => each.name === name && each.limb === limb && each.verdict === "contradicted");
  const trials: TrialResult[] = [];
  const comparable: ComparableTrial[] = [];
  for (const { result } of analyzed) {
    const plates = result.plates.map((plate) => ({ ...plate, proof: plateProof(proofs, plate) }));
    const twoLegs = result.limb === "both" && plates.length === 2;
    const platesContradicted = plates.some((plate) => contradicted(plate.name, plate.limb));
    const proof = weakest(plates.map((plate) => plate.proof));
    const findings =
      twoLegs && result.status !== "refused" && proof === "unproved"
        ? [...result.findings, unproved(platesContradicted)]
        : result.findings;
    trials.push({ ...result, plates, findings });
    if (result.status === "refused" || result.test === undefined || result.limb === undefined) continue;
    comparable.push({
      test: result.test,
      limb: result.limb,
      measures: result.measures,
      excluded: result.excluded !== undefined,
      proof,
      platesContradicted,
      ...(result.dropHeightMetres === undefined ? {} : { dropHeightMetres: result.dropHeightMetres }),
      ...(result.leadingLeg === undefined ? {} : { leadingLeg: result.leadingLeg }),
    });
  }
  return { trials, comparable, findings: proofs.findings };
}

function witness(result: TrialResult, draft: TrialDraft | undefined, description: SessionDescription): PlateTrial {
  const loadedPlate = draft?.loadedPlate;
  return {
    file: result.file,
    trial: result.trial,
    // A limb that was read off the plates says nothing about them.
    limb: draft?.limbFromPlates === true ? "both" : (result.limb ?? "both"),
    plates: result.plates,
    statedAlone: platesOfFile(description, result.file).length > 0,
    ...(loadedPlate === undefined ? {} : { loadedPlate }),
  };
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
      ? "Find out which way the athlete stood, then state the plate of each foot for these trials or exclude them."
      : "State the plate of each foot in session.json or by --columns, or record a single-leg trial on the same plates.",
  );
}

import { type Finding, proseFinding } from "../ground/finding.ts";
import { type Limb, oppositeSide, type Side } from "../ground/limb.ts";
import type { PlateProof } from "../recording/recording.ts";
import { inPlateWords } from "../words/english/plate-words.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";

/** What the proof of plates needs of one trial. */
export interface PlateTrial {
  readonly file: string;
  readonly trial: number;
  /** As stated for the trial (option, session.json, file name); never deduced from the plates, which would prove itself. */
  readonly limb: Limb;
  /** The plates of its recording, with the limb the layout gives them. */
  readonly plates: readonly { readonly name: string; readonly limb: Limb; readonly proof: PlateProof }[];
  /** True where a person stated which foot was where for this file alone, not for the session. */
  readonly statedAlone?: boolean;
  /** True for a recording of standing on one leg, with no jump in it. */
  readonly standing?: boolean;
  /** The plate that bore the single-leg trial, known from its force; absent where neither clearly did. */
  readonly loadedPlate?: string;
}

/** What the session's single-leg trials, and standing on one leg, say about one plate of the layout. */
export interface PlateVerdict {
  readonly name: string;
  /** The limb the layout gives it. */
  readonly limb: Limb;
  /** `silent`: no single-leg trial says anything about it. */
  readonly verdict: "borne-out" | "contradicted" | "silent";
  /** What bears it out: a jump where there is one, else standing; absent where nothing does. */
  readonly by?: "single-leg-trial" | "one-leg-standing";
  /** One plain sentence; empty where nothing contradicts. */
  readonly contradiction: string;
}

export interface PlateProofs {
  readonly plates: readonly PlateVerdict[];
  /** One `plates-contradict` finding, or none. */
  readonly findings: readonly Finding[];
}

/** One single-leg trial says: this foot stood on this plate. */
interface Witness {
  readonly plate: string;
  readonly foot: Side;
  readonly trial: PlateTrial;
  /** True when the other plate was the loaded one and this follows from there being two. */
  readonly byExclusion: boolean;
}

function witnesses(trial: PlateTrial): readonly Witness[] {
  const { limb, loadedPlate, plates } = trial;
  if (limb === "both" || loadedPlate === undefined || plates.length !== 2) return [];
  const other = plates.find((plate) => plate.name !== loadedPlate);
  const direct: Witness = { plate: loadedPlate, foot: limb, trial, byExclusion: false };
  return other === undefined
    ? [direct]
    : [direct, { plate: other.name, foot: oppositeSide(limb), trial, byExclusion: true }];
}

/**
 * What a trial says about a layout. One that agrees with what was stated for its file alone shows how the athlete stood
 * then; of trials with another layout it says nothing, for the athlete may have turned round between them.
 */
function speaksOf(witness: Witness, layout: PlateTrial["plates"][number]): boolean {
  if (witness.plate !== layout.name) return false;
  const own = witness.trial.plates.find((plate) => plate.name === witness.plate);
  return witness.trial.statedAlone !== true || own?.limb !== witness.foot || layout.limb === witness.foot;
}

/** What to do where single-leg trials and the plates' feet disagree: either may be wrong. */
export const contradictionAction =
  "Find out which way the athlete stood and whether each single-leg trial names the leg that jumped; then state the plate of each foot, correct the leg, or exclude the trials that are wrong.";

/** True for a single-leg trial whose name a contradiction gives as its ground. */
export function isNamedBy(contradiction: Finding, trial: Pick<PlateTrial, "file" | "trial">): boolean {
  const name = nameOf(trial);
  const { message } = findingInWords(contradiction, english);
  return ["(", ", "].some((before) => [")", ", "].some((after) => message.includes(`${before}${name}${after}`)));
}

function nameOf(trial: Pick<PlateTrial, "file" | "trial">): string {
  return trial.trial === 1 ? trial.file : `${trial.file} trial ${trial.trial}`;
}

function contradictionFinding(against: readonly Witness[], inFavour: number): Finding {
  const direct = against.filter((each) => !each.byExclusion);
  const claims = [...new Set(direct.map((each) => `the ${each.foot} foot on ${inPlateWords(each.plate)}`))];
  const agreeing = inFavour === 1 ? "1 other single-leg trial agrees" : `${inFavour} other single-leg trials agree`;
  const split = inFavour === 0 ? "" : ` ${agreeing} with those: the athlete may have turned round.`;
  return proseFinding(
    "plates-contradict",
    "warning",
    `Single-leg trials put ${claims.join(" and ")} (${direct.map((each) => nameOf(each.trial)).join(", ")}); the columns' names or the stated plates say otherwise.${split}`,
    contradictionAction,
    { where: [...new Set(direct.map((each) => inPlateWords(each.plate)))].join(", ") },
  );
}

/**
 * The foot that the layout of a single-leg trial gives its loaded plate, where the limb stated for the trial is the other
 * one: a contradiction that only a person can settle (METHODS §8). None where a person, or a saved layout, says of
 * another recording of the session that the stated foot was on that plate: the columns' names then say less.
 * @param answers of the session's trials
 */
export function footAgainstLimb(trial: PlateTrial, answers: FeetAnswered): Side | undefined {
  const { limb, loadedPlate, plates } = trial;
  if (limb === "both" || loadedPlate === undefined || plates.length !== 2) return undefined;
  const own = plates.find((plate) => plate.name === loadedPlate);
  if (own === undefined || own.limb === "both" || own.limb === limb) return undefined;
  const answered = own.proof === "unproved" && answers.has(layoutKey({ name: loadedPlate, limb }));
  return answered ? undefined : own.limb;
}

/** Plates with a limb that something else than the columns' names gives them somewhere in the session. */
export type FeetAnswered = ReadonlySet<string>;

/** Gathers them once for a session. */
export function feetAnswered(session: readonly PlateTrial[]): FeetAnswered {
  const proved = session.flatMap(({ plates }) => plates).filter(({ proof }) => proof !== "unproved");
  return new Set(proved.map(layoutKey));
}

function layoutKey({ name, limb }: Pick<PlateTrial["plates"][number], "name" | "limb">): string {
  return `${name}\n${limb}`;
}

/**
 * Decides for one session, plate by plate, whether its single-leg trials bear out or contradict the limb that the
 * layout gives the plate (METHODS §8). A contradiction outweighs every other proof, a statement by the tester too;
 * one trial is enough for either. Plates that carry both limbs are left as they are. The finding is about the layouts
 * of trials that need one: two-leg trials, and single-leg trials whose stated limb their own layout contradicts.
 */
export function provePlates(trials: readonly PlateTrial[]): PlateProofs {
  const said = trials.flatMap(witnesses);
  const plates = new Map<string, PlateVerdict>();
  const against = new Set<Witness>();
  const inFavour = new Set<Witness>();
  const answers = feetAnswered(trials);
  const needing = trials.filter((trial) => trial.limb === "both" || footAgainstLimb(trial, answers) !== undefined);
  const reported = new Set(needing.flatMap((trial) => trial.plates.map(layoutKey)));
  for (const plate of trials.flatMap((trial) => trial.plates)) {
    // What is said of a layout is the same in every recording that has it.
    if (plates.has(layoutKey(plate))) continue;
    const about = plate.limb === "both" ? [] : said.filter((each) => speaksOf(each, plate));
    const contradicting = about.filter((each) => each.foot !== plate.limb);
    if (reported.has(layoutKey(plate))) {
      for (const each of about) (each.foot === plate.limb ? inFavour : against).add(each);
    }
    const foot = contradicting[0]?.foot;
    // The same name may stand for either limb in different files: each layout is judged by itself.
    plates.set(layoutKey(plate), {
      name: plate.name,
      limb: plate.limb,
      verdict: foot !== undefined ? "contradicted" : about.length > 0 ? "borne-out" : "silent",
      ...(foot === undefined && about.length > 0
        ? { by: about.every((each) => each.trial.standing) ? "one-leg-standing" : "single-leg-trial" }
        : {}),
      contradiction: foot === undefined ? "" : `Single-leg trials put the ${foot} foot on ${inPlateWords(plate.name)}.`,
    });
  }
  return {
    plates: [...plates.values()],
    findings:
      against.size === 0
        ? []
        : [contradictionFinding([...against], [...inFavour].filter((each) => !each.byExclusion).length)],
  };
}

/** True where single-leg trials say of a plate otherwise than its layout. */
export function isContradictedPlate(proofs: PlateProofs, { name, limb }: PlateTrial["plates"][number]): boolean {
  return proofs.plates.some((each) => each.name === name && each.limb === limb && each.verdict === "contradicted");
}

/**
 * The proof of one plate of one recording after the single-leg trials have spoken: theirs where they bear the layout
 * out, none where they contradict it, else the one the recording came with.
 */
export function plateProof(proofs: PlateProofs, plate: PlateTrial["plates"][number]): PlateProof {
  const said = proofs.plates.find((each) => each.name === plate.name && each.limb === plate.limb);
  if (said?.verdict === "contradicted") return "unproved";
  return said?.by ?? plate.proof;
}

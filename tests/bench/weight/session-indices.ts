import type { Side } from "../../../core/ground/limb.ts";
import { told } from "../../told.ts";
import { analyzeSimulated, type SimulatedTrial } from "./simulated-session.ts";

/** What one simulated session says about the symmetry of single-leg height. */
export interface IndexRow {
  /** How much more the right plate reads than the left one. */
  readonly platesApartPercent: number;
  /** Of the jumps that were simulated, right over left. */
  readonly trueIndex: number;
  readonly impulseIndex: number | undefined;
  readonly flightIndex: number | undefined;
  readonly status: string;
  /** True where the status says the opposite of the true index. */
  readonly isWrong: boolean;
  /** True where drop heights were said to differ between the legs. */
  readonly dropsApart: boolean;
  /** What was found of the plates in words of figures; empty where nothing was. */
  readonly found: string;
}

const threshold = 90;

/** Analyses a simulated session whose right side is the involved one. */
export function sessionIndices(trials: readonly SimulatedTrial[], platesApartPercent: number): IndexRow {
  const { result } = analyzeSimulated(trials);
  const mean = (side: Side): number => {
    const own = trials.filter((each) => each.limb === side && each.file.includes("countermovement"));
    return own.reduce((sum, each) => sum + each.heightMetres, 0) / own.length;
  };
  const trueIndex = (100 * mean("right")) / mean("left");
  const index = (measure: string): number | undefined =>
    result.comparisons.find(
      (each) => each.test === "countermovementJump" && each.legs === "single" && each.measure === measure,
    )?.index;
  const status =
    result.criteria.find(
      ({ criterion }) =>
        criterion.kind === "symmetry" &&
        criterion.test === "countermovementJump" &&
        criterion.legs === "single" &&
        criterion.measure === "jumpHeightImpulse",
    )?.status ?? "";
  const [apart] = /[\d.]+\s?% ± [\d.]+/.exec(
    told(result.findings.find((each) => (each.code as string) === "plates-disagree"))?.message ?? "",
  ) ?? [""];
  return {
    platesApartPercent,
    trueIndex,
    impulseIndex: index("jumpHeightImpulse"),
    flightIndex: index("jumpHeightFlightTime"),
    status,
    isWrong: (status === "met" && trueIndex < threshold) || (status === "not-met" && trueIndex >= threshold),
    dropsApart: result.findings.some((each) => each.code === "drop-height-legs-differ"),
    found: apart ?? "",
  };
}

import type { Side } from "../../core/ground/limb.ts";
import type { SimulatedDropJump } from "../../core/simulate/drop-jump.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import type { DropJumpOptions } from "../../core/simulate/drop-options.ts";
import { heightForFlightTimeHeight } from "../../core/simulate/drop-options.ts";
import { rightShareFromIndex } from "../../core/simulate/options.ts";
import type { Random } from "../../core/simulate/random.ts";
import { createRandom } from "../../core/simulate/random.ts";
import type { DemoSession, DropTargets } from "./demo-world.ts";
import { drawCentred, rateHz, spread, trialsPerTest } from "./spread.ts";

/** One drop-jump file of a session before it is written as text. */
export interface RecordedDrop {
  readonly file: string;
  readonly limb: "both" | "left" | "right";
  readonly boxHeightMetres: number;
  readonly leadingLeg: Side;
  readonly jump: SimulatedDropJump;
}

const boxes = { both: 0.3, left: 0.2, right: 0.2 } as const;
const effectiveDrops = { both: 0.27, left: 0.17, right: 0.17 } as const;

/** On one leg lower jumps come with longer contacts: 5 % of height and 4 % of contact then make 8 % of their ratio. */
const singleCorrelation = -0.575;

/**
 * Heights and contact times of four trials: their ratio has exactly the mean that the table's height over the table's
 * contact time gives. A mean of ratios exceeds the ratio of means by about 0.2 %; what that costs is divided between
 * height and contact, so that both still round to the table.
 */
function drawHeightsAndContacts(
  targets: DropTargets,
  limb: RecordedDrop["limb"],
  random: Random,
): readonly { readonly flightTimeHeight: number; readonly contactSeconds: number }[] {
  const heights = drawCentred(random);
  const contacts = drawCorrelated(random, heights, limb === "both" ? 0 : singleCorrelation);
  const raw = heights.map((height, index) => ({
    height: (targets.heightCm / 100) * (1 + (limb === "both" ? spread.twoLegHeight : spread.oneLegHeight) * height),
    contact: targets.contactSeconds * (1 + spread.contact * (contacts[index] ?? 0)),
  }));
  const ratio = raw.reduce((sum, each) => sum + each.height / each.contact, 0) / raw.length;
  const excess = (ratio * targets.contactSeconds) / (targets.heightCm / 100);
  return raw.map(({ height, contact }) => ({
    flightTimeHeight: height * excess ** -0.5,
    contactSeconds: contact * excess ** 0.5,
  }));
}

/** Four values as drawn by `drawCentred`, with the given sample correlation to others drawn so. */
function drawCorrelated(random: Random, others: readonly number[], correlation: number): readonly number[] {
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, each, index) => sum + each * (b[index] ?? 0), 0) / (trialsPerTest - 1);
  const raw = drawCentred(random);
  const along = dot(raw, others);
  const across = raw.map((each, index) => each - along * (others[index] ?? 0));
  const length = Math.sqrt(dot(across, across));
  return across.map(
    (each, index) => correlation * (others[index] ?? 0) + (Math.sqrt(1 - correlation ** 2) * each) / length,
  );
}

/** All drop jumps of a session: two legs, then the uninvolved leg, then the involved one. */
export function recordDropJumps(session: DemoSession): readonly RecordedDrop[] {
  const { drops } = session;
  if (drops === undefined) return [];
  const random = createRandom(session.seed + 8);
  const first = session.description.involved === "left" ? "right" : "left";
  const second = first === "left" ? "right" : "left";
  return (["both", first, second] as const).flatMap((limb) => recordOneKind(session, limb, drops[limb], random));
}

function recordOneKind(
  session: DemoSession,
  limb: RecordedDrop["limb"],
  targets: DropTargets,
  random: Random,
): RecordedDrop[] {
  const drawn = drawHeightsAndContacts(targets, limb, random);
  const shares = [drawCentred(random), drawCentred(random), drawCentred(random)];
  const involved = session.description.involved === "right" ? "right" : "left";
  const { twoLegs } = session;
  const firstSeed = session.seed + { both: 60, left: 70, right: 80 }[limb];
  const isInvolved = limb === involved && session.description.involved !== "none";
  return Array.from({ length: trialsPerTest }, (_, index): RecordedDrop => {
    const wanted = drawn[index];
    if (wanted === undefined) throw new Error("As many are drawn as there are trials.");
    const lower = random.between(0.003, 0.01);
    const share = (which: number, target: number): number =>
      rightShareFromIndex(target, involved) + spread.share * (shares[which]?.[index] ?? 0);
    // The legs take turns in leading, so that their means do not favour either.
    const leadingLeg = limb === "both" ? (index % 2 === 0 ? "left" : "right") : limb;
    const both = {
      plates: "two",
      contactShape: index % 2 === 0 ? "hump" : "early-hump",
      leadingLeg,
      leadingFirstSeconds: random.between(0.002, 0.005),
      leadingBrakingGain: 0.025,
      rightShares: {
        standing: rightShareFromIndex((100 + twoLegs.propulsion) / 2, involved) + random.between(-0.01, 0.01),
        braking: share(0, twoLegs.braking),
        propulsion: share(1, twoLegs.propulsion),
        landing: share(2, twoLegs.landingPeak),
      },
      limbTakeoffDifferenceSeconds: random.between(-0.003, 0.003),
      limbLandingDifferenceSeconds: random.between(-0.002, 0.002),
    } as const;
    const single = {
      plates: session.singlePlates,
      contactShape: isInvolved || index % 2 === 1 ? "impact-peak" : "hump",
    } as const;
    const options: DropJumpOptions = {
      seed: firstSeed + 2 * index,
      rateHz,
      massKg: session.massKg,
      limb,
      boxHeightMetres: boxes[limb],
      dropHeightEffectiveMetres:
        (targets.dropHeightEffectiveMetres ?? effectiveDrops[limb]) * (1 + 0.012 * (shares[0]?.[index] ?? 0)),
      takeoffRateNewtonsPerSecond: Math.min(29000, 42 * 9.80665 * session.massKg),
      jumpHeightMetres: heightForFlightTimeHeight(wanted.flightTimeHeight, lower),
      contactSeconds: wanted.contactSeconds,
      contactLowerMetres: random.between(0.005, 0.015),
      touchdownLowerMetres: lower,
      landingShape: session.landingShape,
      swayMetres: random.between(0.0005, 0.001),
      plateNoiseNewtons: 1.2,
      emptySecondsBefore: random.between(0.7, 0.9),
      quietSecondsAfter: random.between(2.45, 2.6),
      ...(limb === "both" ? both : single),
    };
    return {
      file: `drop-jump-${limb}-${index + 1}.csv`,
      limb,
      boxHeightMetres: boxes[limb],
      leadingLeg,
      jump: simulateDropJump(options),
    };
  });
}

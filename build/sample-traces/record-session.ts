import type { TestKind } from "../../core/ground/test-kind.ts";
import { shippedProtocol } from "../../core/protocol/shipped-protocols.ts";
import type { SimulatedJump } from "../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import type { JumpOptions } from "../../core/simulate/options.ts";
import { rightShareFromIndex } from "../../core/simulate/options.ts";
import type { Random } from "../../core/simulate/random.ts";
import { createRandom } from "../../core/simulate/random.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { Protocol } from "../../core/stated/protocol-schema.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { DemoSession, OneLegTargets } from "./demo-world.ts";
import type { RecordedDrop } from "./record-drop-jumps.ts";
import { drawCentred, rateHz, spread, trialsPerTest } from "./spread.ts";

/** One jump file of a session before it is written as text. */
export interface RecordedTrial {
  readonly file: string;
  readonly limb: "both" | "left" | "right";
  readonly jump: SimulatedJump;
}

/** What all trials of the invented club have in common. */
function common(session: DemoSession, seed: number, random: Random) {
  return {
    seed,
    rateHz,
    massKg: session.massKg,
    landingShape: session.landingShape,
    swayMetres: random.between(0.0005, 0.001),
    plateNoiseNewtons: 1.2,
    quietSecondsBefore: random.between(2.05, 2.3),
    quietSecondsAfter: random.between(2.5, 2.65),
    ...(session.facedWrongWay === undefined ? {} : { facedWrongWay: session.facedWrongWay }),
  };
}

function recordTwoLegs(session: DemoSession, random: Random): RecordedTrial[] {
  const { twoLegs } = session;
  const involved = session.description.involved === "right" ? "right" : "left";
  const heights = drawCentred(random);
  const seconds = drawCentred(random);
  const depths = drawCentred(random);
  const shares = [drawCentred(random), drawCentred(random), drawCentred(random)];
  return Array.from({ length: trialsPerTest }, (_, index) => {
    const share = (which: number, target: number): number =>
      rightShareFromIndex(target, involved) + spread.share * (shares[which]?.[index] ?? 0);
    const varied = (target: number, by: number, noise: readonly number[]): number =>
      target * (1 + by * (noise[index] ?? 0));
    const standing = rightShareFromIndex((100 + twoLegs.propulsion) / 2, involved);
    const rail = session.railTrial?.trial === index + 1 ? { railWeightFraction: session.railTrial.fraction } : {};
    const options: JumpOptions = {
      ...common(session, session.seed + 2 * index, random),
      ...rail,
      limb: "both",
      plates: "two",
      jumpHeightMetres: varied(twoLegs.heightCm, spread.twoLegHeight, heights) / 100,
      timeToTakeoffSeconds: varied(twoLegs.seconds, spread.seconds, seconds),
      depthMetres: varied(twoLegs.depthCm, spread.depth, depths) / 100,
      positionAtTakeoffMetres: 0.125,
      touchdownLowerMetres: random.between(0.005, 0.015),
      pushShape: session.pushShapes[index % session.pushShapes.length] ?? "even",
      rightShares: {
        standing: standing + random.between(-0.01, 0.01),
        braking: share(0, twoLegs.braking),
        propulsion: share(1, twoLegs.propulsion),
        landing: share(2, twoLegs.landingPeak),
      },
      limbTakeoffDifferenceSeconds: random.between(-0.004, 0.004),
      limbTouchdownDifferenceSeconds: random.between(-0.002, 0.002),
    };
    return {
      file: `countermovement-both-${index + 1}.csv`,
      limb: "both",
      jump: simulateCountermovementJump(options),
    };
  });
}

function recordOneLeg(
  session: DemoSession,
  limb: "left" | "right",
  targets: OneLegTargets,
  random: Random,
): RecordedTrial[] {
  const heights = drawCentred(random);
  const seconds = drawCentred(random);
  const firstSeed = session.seed + (limb === "left" ? 20 : 40);
  return Array.from({ length: trialsPerTest }, (_, index) => ({
    file: `countermovement-${limb}-${index + 1}.csv`,
    limb,
    jump: simulateCountermovementJump({
      ...common(session, firstSeed + 2 * index, random),
      limb,
      plates: session.singlePlates,
      jumpHeightMetres: (targets.heightCm * (1 + spread.oneLegHeight * (heights[index] ?? 0))) / 100,
      timeToTakeoffSeconds: targets.seconds * (1 + spread.seconds * (seconds[index] ?? 0)),
      unweightingMinimum: targets.minimum + random.between(-0.02, 0.02),
      positionAtTakeoffMetres: 0.1,
      touchdownLowerMetres: random.between(0.003, 0.01),
      pushShape: index % 2 === 0 ? "even" : "late-rise",
    }),
  }));
}

/** All jumps of a session: two legs, then the uninvolved leg, then the involved one. */
export function recordSession(session: DemoSession): readonly RecordedTrial[] {
  const random = createRandom(session.seed);
  const trials = recordTwoLegs(session, random);
  if (session.oneLeg === undefined) return trials;
  const first = session.description.involved === "left" ? "right" : "left";
  const second = first === "left" ? "right" : "left";
  return [
    ...trials,
    ...recordOneLeg(session, first, session.oneLeg[first], random),
    ...recordOneLeg(session, second, session.oneLeg[second], random),
  ];
}

/** The session's `session.json`. */
export function describeSession(
  session: DemoSession,
  trials: readonly RecordedTrial[],
  drops: readonly RecordedDrop[],
): SessionDescription {
  const { dialect } = session;
  const unnamed = dialect.header === undefined;
  const first = dialect.time === undefined ? 1 : 2;
  const entry = ({ file, limb, jump }: RecordedTrial | RecordedDrop, test: TestKind): FileEntry => ({
    file,
    test,
    limb,
    ...(dialect.time === undefined ? { rateHz } : {}),
    ...(unnamed ? { unit: dialect.unit } : {}),
    ...(unnamed
      ? {
          columns: {
            ...(dialect.time === undefined ? {} : { time: 1 }),
            ...(jump.plates.length === 2 ? { left: first, right: first + 1 } : { total: first }),
          },
        }
      : {}),
  });
  return {
    ...session.description,
    massKg: session.massKg,
    protocol: protocolOf(session),
    ...(session.platesStated && !unnamed
      ? {
          plates: [
            { column: "left", foot: "left" },
            { column: "right", foot: "right" },
          ] as const,
        }
      : {}),
    simulated: true,
    files: [
      ...trials.map((trial) => entry(trial, "countermovementJump")),
      ...drops.map((drop) => ({
        ...entry(drop, "dropJump"),
        dropHeightMetres: drop.boxHeightMetres,
        leadingLeg: drop.leadingLeg,
      })),
    ],
  };
}

/** Two-leg jumps alone before running, every test afterwards. */
function protocolOf({ oneLeg }: DemoSession): Protocol {
  const id = oneLeg === undefined ? "return-to-running" : "return-to-pivoting-sport";
  const protocol = shippedProtocol(id);
  if (protocol === undefined) throw new RangeError(`No protocol ${id} ships.`);
  return protocol;
}

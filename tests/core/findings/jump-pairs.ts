import { consistencyFindings } from "../../../core/measures/consistency-findings.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { recordActs } from "../../../core/simulate/act.ts";
import { simulateBrokenOffJump } from "../../../core/simulate/broken-off-jump.ts";
import { countermovementAct } from "../../../core/simulate/countermovement-act.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { addHump, addStep } from "../../../core/simulate/recording-faults.ts";
import { simulateHops } from "../../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import { standAct } from "../../../core/simulate/standing-acts.ts";
import type { FaultyFile } from "../simulate/faulty/faulty-trial.ts";
import {
  athlete,
  dropOf,
  jumpOf,
  saidDrop,
  saidHops,
  saidJump,
  saidSquat,
  written,
} from "../simulate/faulty/faulty-trial.ts";
import { asRecording } from "../simulated/simulated-trial.ts";
import { around, type FindingPairs, kindPair, pairOf, seed } from "./pair.ts";

const saidLanding: FaultyFile["said"] = { test: "dropLanding", limb: "both", dropHeightMetres: 0.3 };
/** The flight of a jump of 0.27 m lasts 0.469 s; 0.6 of it are 0.281 s. */
const jumpHeightMetres = 0.27;

/** What athletes do in each test. The threshold of each finding stands in the settings catalogue. */
export const jumpPairs: FindingPairs = {
  "no-takeoff": kindPair("standing-called-jump"),
  // Nobody falls onto the plate: the standing jump is on it from the start.
  "no-landing": pairOf(
    () => written(standing(), saidLanding),
    () => written(simulateDropLanding({ ...athlete(seed), boxHeightMetres: 0.3, leadingLeg: "left" }), saidLanding),
  ),
  "broken-off": kindPair("broken-off"),
  "no-quiet-standing": kindPair("empty-plates"),
  "starts-moving": kindPair("starts-moving"),
  "several-flights": around(bounced, 0.29, 0.27),
  "bounce-after-landing": around(bounced, 0.12, undefined),
  // The plate is left again before force has reached body weight.
  "no-first-peak": around(bounced, 0.25, 0.2),
  // An early peak under one foot, or a hump too small to be a peak.
  "first-peaks-differ": around(withEarlyPeak, 1400, 60),
  "landing-off-plate": kindPair("lands-beside-plates"),
  // Three seconds are needed for a time to stabilisation.
  "landing-short": around(
    (quietSecondsAfter: number) => written(jumpOf(seed, { quietSecondsAfter }), saidJump),
    1.5,
    3.2,
  ),
  // 5 % of 686 N are 34 N: the athlete comes to rest outside that band, or inside.
  "landing-restless": around(
    (newtons: number) => {
      const jump = jumpOf(seed, { massKg: 70, quietSecondsAfter: 4 });
      return written(addStep(jump, 0, jump.truth.events.landingEnd + 0.3, newtons), saidJump);
    },
    38,
    30,
  ),
  "heights-differ": kindPair("heights-differ"),
  "dip-in-squat-jump": around(
    (weightFraction: number) => {
      const options = { ...athlete(seed), jumpHeightMetres: 0.25, dip: { weightFraction, seconds: 0.3 } };
      return written(simulateSquatJump(options), saidSquat);
    },
    0.065,
    0.035,
  ),
  "slow-contact": around((contactSeconds: number) => written(dropOf(seed, { contactSeconds }), saidDrop), 0.256, 0.244),
  // 20 % below a box of 0.30 m is 0.24 m.
  "drop-height-off": around(
    (dropHeightEffectiveMetres: number) => written(dropOf(seed, { dropHeightEffectiveMetres }), saidDrop),
    0.232,
    0.248,
  ),
  "drop-height-not-stated": pairOf(
    () => written(dropOf(seed), { test: "dropJump", limb: "both", leadingLeg: "left" }),
    () => written(dropOf(seed), saidDrop),
  ),
  "leading-leg-missing": kindPair("leading-leg-missing"),
  // The right foot lands first although the left leg is stated to lead; within some milliseconds nothing can be told.
  "leading-leg-contradicted": around(
    (leadingFirstSeconds: number) => written(dropOf(seed, { leadingLeg: "right", leadingFirstSeconds }), saidDrop),
    0.012,
    0.002,
  ),
  "velocity-from-flight": around(
    (endsAfterTouchdownSeconds: number | undefined) => ({
      ...written(dropOf(seed, endsAfterTouchdownSeconds === undefined ? {} : { endsAfterTouchdownSeconds }), saidDrop),
      massKg: athlete(seed).massKg,
    }),
    0.4,
    undefined,
  ),
  "hops-few": around(
    (count: number) => {
      const hops = Array.from({ length: count }, () => ({ contactSeconds: 0.2, jumpHeightMetres: 0.2 }));
      return written(simulateHops({ ...athlete(seed), entryHeightMetres: 0.18, hops }), saidHops);
    },
    4,
    5,
  ),
  // With a mass far too large the fall never stops; with the athlete's own it does.
  "event-not-found": around(
    (factor: number) => ({
      ...written(dropOf(seed, { endsAfterTouchdownSeconds: 0.3 }), saidDrop),
      massKg: factor * athlete(seed).massKg,
    }),
    1.6,
    1,
  ),
  "test-contradicts": kindPair("jump-called-drop-jump"),
  // The integral that makes the velocity is off by more than the 10⁻⁶ that two sums may differ by, or by less.
  "self-check-broken": {
    has: () => selfCheck(1 + 1e-5),
    near: () => selfCheck(1 + 1e-7),
  },
};

/** A landing in which the left foot alone meets the plate hard, 4 to 20 ms after its touchdown. */
export function withEarlyPeak(newtons: number): FaultyFile {
  const jump = jumpOf(seed);
  const from = jump.truth.events.touchdown + 0.004;
  return written(addHump(jump, 0, { from, seconds: 0.016, newtons }), saidJump);
}

function standing() {
  const { massKg, swayMetres } = athlete(seed);
  const options = { seed, rateHz: 1000, massKg, plates: "two", depthMetres: 0.002, swayMetres } as const;
  return simulateBrokenOffJump({ ...options, plateNoiseNewtons: 1.2 });
}

/** The self-check of a sound jump whose running integral of force, which the velocity is made of, is off by a factor. */
function selfCheck(factor: number): readonly string[] {
  const statement = { test: "countermovementJump", limb: "both" } as const;
  const [trial] = analyzeRecording(asRecording(jumpOf(seed)), statement, defaultSettings);
  const jump = trial?.jump?.jump;
  if (jump === undefined) throw new Error("The sound jump was not analysed.");
  const motion = { ...jump.motion, impulse: jump.motion.impulse.map((each) => factor * each) };
  const context = { jump: { ...jump, motion }, limb: "both", limbs: [], noiseNewtons: 0, zeroNewtons: 0 } as const;
  return consistencyFindings(context, [], defaultSettings).map(({ code }) => code);
}

function bounced(bounceFlightSeconds: number | undefined): FaultyFile {
  const { massKg } = athlete(seed);
  const bounce = bounceFlightSeconds === undefined ? {} : { bounceFlightSeconds };
  const jump = countermovementAct({ massKg, limb: "both", jumpHeightMetres, ...bounce });
  return written(recordActs(athlete(seed), 0.5, [standAct(2.2), jump, standAct(2.6)]), saidJump);
}

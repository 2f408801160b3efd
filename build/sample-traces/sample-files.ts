import type { DropJumpTruth } from "../../core/simulate/drop-truth.ts";
import type { JumpTruth, PerLimb, PhaseTruth } from "../../core/simulate/truth.ts";
import { writeSessionFile } from "../../core/stated/session-file.ts";
import type { DemoSession, DropTargets } from "./demo-world.ts";
import { demoSessions } from "./demo-world.ts";
import { describeDoubtful, makeDoubtfulFiles } from "./doubtful.ts";
import { describeSamples } from "./readme.ts";
import type { RecordedDrop } from "./record-drop-jumps.ts";
import { recordDropJumps } from "./record-drop-jumps.ts";
import type { RecordedTrial } from "./record-session.ts";
import { describeSession, recordSession } from "./record-session.ts";
import { writeDelimited } from "./write-delimited.ts";

/** A session with its simulated trials. */
export interface RecordedSession {
  readonly session: DemoSession;
  readonly trials: readonly RecordedTrial[];
  readonly drops: readonly RecordedDrop[];
}

/** Every file of `sample-traces/` by its path there. The same text on every run. */
export function makeSampleFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const recorded = demoSessions.map(
    (session): RecordedSession => ({ session, trials: recordSession(session), drops: recordDropJumps(session) }),
  );
  const expectedTrials: Record<string, unknown> = {};
  for (const { session, trials, drops } of recorded) {
    for (const { file, limb, jump } of trials) {
      files.set(`${session.folder}/${file}`, writeDelimited(jump, session.dialect));
      expectedTrials[`${session.folder}/${file}`] = expectedOf(jump.truth, limb);
    }
    for (const { file, limb, jump } of drops) {
      files.set(`${session.folder}/${file}`, writeDelimited(jump, session.dialect));
      expectedTrials[`${session.folder}/${file}`] = expectedOfDrop(jump.truth, limb);
    }
    files.set(`${session.folder}/session.json`, writeSessionFile(describeSession(session, trials, drops)));
  }
  const doubtful = makeDoubtfulFiles();
  for (const { file, text } of doubtful) files.set(`doubtful/${file}`, text);
  files.set("doubtful/session.json", writeSessionFile(describeDoubtful(doubtful)));
  const expectedFindings = Object.fromEntries(
    doubtful.map(({ file, code, severity }) => [`doubtful/${file}`, { code, severity }]),
  );
  const expectedSessions = Object.fromEntries(recorded.map(({ session }) => [session.folder, targetsOf(session)]));
  files.set(
    "expected.json",
    `${JSON.stringify({ simulated: true, sessions: expectedSessions, trials: expectedTrials, doubtful: expectedFindings }, null, 1)}\n`,
  );
  files.set("README.md", describeSamples(recorded, doubtful));
  return files;
}

/** The means a session was made for; indices are involved over uninvolved (left over right where nobody is injured). */
function targetsOf(session: DemoSession) {
  const { twoLegs, oneLeg, drops } = session;
  const dropped = ({ heightCm, contactSeconds }: DropTargets) => ({
    jumpHeightFlightTimeMetres: rounded(heightCm / 100),
    contactTimeSeconds: contactSeconds,
    reactiveStrengthIndex: rounded(heightCm / 100 / contactSeconds),
  });
  return {
    massKg: session.massKg,
    twoLegs: {
      jumpHeightMetres: rounded(twoLegs.heightCm / 100),
      timeToTakeoffSeconds: twoLegs.seconds,
      depthMetres: rounded(twoLegs.depthCm / 100),
      brakingIndexPercent: twoLegs.braking,
      propulsionIndexPercent: twoLegs.propulsion,
      landingPeakIndexPercent: twoLegs.landingPeak,
    },
    ...(oneLeg === undefined
      ? {}
      : {
          singleLegJumpHeightMetres: {
            left: rounded(oneLeg.left.heightCm / 100),
            right: rounded(oneLeg.right.heightCm / 100),
          },
        }),
    ...(drops === undefined
      ? {}
      : {
          dropJump: { both: dropped(drops.both), left: dropped(drops.left), right: dropped(drops.right) },
        }),
    ...(session.facedWrongWay === true ? { facedWrongWay: true } : {}),
  };
}

/** The truth of one trial in the words of the result document. Limbs are the feet, whatever the columns are called. */
function expectedOf(truth: JumpTruth, limb: RecordedTrial["limb"]) {
  const phase = (of: PhaseTruth) => expectedPhase(of, limb);
  const { events, phases } = truth;
  return {
    limb,
    massKg: truth.massKg,
    bodyWeight: rounded(truth.bodyWeightNewtons),
    takeoffVelocity: rounded(truth.takeoffVelocity),
    jumpHeight: rounded(truth.jumpHeightMetres),
    flightTime: rounded(truth.flightSeconds),
    timeToTakeoff: rounded(truth.timeToTakeoffSeconds),
    countermovementDepth: rounded(truth.depthMetres),
    positionAtTakeoff: rounded(truth.positionAtTakeoffMetres),
    forceAtLowestPosition: rounded(truth.forceAtLowestPositionNewtons),
    peakPropulsionPower: rounded(truth.peakPropulsionPowerWatts),
    peakBrakingPower: rounded(truth.peakBrakingPowerWatts),
    events: Object.fromEntries(Object.entries(events).map(([name, time]) => [name, rounded(time)])),
    unweighting: { seconds: rounded(phases.unweighting.seconds), netImpulse: rounded(phases.unweighting.netImpulse) },
    braking: phase(phases.braking),
    propulsion: phase(phases.propulsion),
    landing: phase(phases.landing),
  };
}

/** The same of a drop jump. */
function expectedOfDrop(truth: DropJumpTruth, limb: RecordedDrop["limb"]) {
  const { events, phases } = truth;
  return {
    limb,
    massKg: truth.massKg,
    bodyWeight: rounded(truth.bodyWeightNewtons),
    dropHeight: truth.boxHeightMetres,
    dropHeightEffective: rounded(truth.dropHeightEffectiveMetres),
    ...(truth.leadingLeg === undefined ? {} : { leadingLeg: truth.leadingLeg }),
    contactTime: rounded(truth.contactSeconds),
    flightTime: rounded(truth.flightSeconds),
    takeoffVelocity: rounded(truth.takeoffVelocity),
    jumpHeight: rounded(truth.jumpHeightMetres),
    jumpHeightFlightTime: rounded(truth.jumpHeightFlightTimeMetres),
    reactiveStrengthIndex: rounded(truth.reactiveStrengthIndex),
    forceAtLowestPosition: rounded(truth.forceAtLowestPositionNewtons),
    events: Object.fromEntries(Object.entries(events).map(([name, time]) => [name, rounded(time)])),
    braking: expectedPhase(phases.braking, limb),
    propulsion: expectedPhase(phases.propulsion, limb),
    landing: expectedPhase(phases.landing, limb),
  };
}

function expectedPhase({ seconds, grossImpulse, netImpulse, peakForce }: PhaseTruth, limb: RecordedTrial["limb"]) {
  const limbs = ({ both, left, right }: PerLimb) =>
    limb === "both" ? { both: rounded(both), left: rounded(left), right: rounded(right) } : { [limb]: rounded(both) };
  return {
    seconds: rounded(seconds),
    netImpulse: rounded(netImpulse),
    grossImpulse: limbs(grossImpulse),
    peakForce: limbs(peakForce),
  };
}

/** Nine decimals: far below what any detector can see, and the same text on every machine. */
function rounded(value: number): number {
  return Number(value.toFixed(9));
}

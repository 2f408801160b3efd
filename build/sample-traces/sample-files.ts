import { writeSessionFile } from "../../core/session-file.ts";
import type { JumpTruth, PerLimb, PhaseTruth } from "../../core/simulate/truth.ts";
import type { DemoSession } from "./demo-world.ts";
import { demoSessions } from "./demo-world.ts";
import { describeDoubtful, makeDoubtfulFiles } from "./doubtful.ts";
import { describeSamples } from "./readme.ts";
import type { RecordedTrial } from "./record-session.ts";
import { describeSession, recordSession } from "./record-session.ts";
import { writeDelimited } from "./write-delimited.ts";

/** A session with its simulated trials. */
export interface RecordedSession {
  readonly session: DemoSession;
  readonly trials: readonly RecordedTrial[];
}

/** Every file of `sample-traces/` by its path there. The same text on every run. */
export function makeSampleFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const recorded = demoSessions.map((session): RecordedSession => ({ session, trials: recordSession(session) }));
  const expectedTrials: Record<string, unknown> = {};
  for (const { session, trials } of recorded) {
    for (const { file, limb, jump } of trials) {
      files.set(`${session.folder}/${file}`, writeDelimited(jump, session.dialect));
      expectedTrials[`${session.folder}/${file}`] = expectedOf(jump.truth, limb);
    }
    files.set(`${session.folder}/session.json`, writeSessionFile(describeSession(session, trials)));
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
  const { twoLegs, oneLeg } = session;
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
    ...(session.facedWrongWay === true ? { facedWrongWay: true } : {}),
  };
}

/** The truth of one trial in the words of the result document. Limbs are the feet, whatever the columns are called. */
function expectedOf(truth: JumpTruth, limb: RecordedTrial["limb"]) {
  const limbs = ({ both, left, right }: PerLimb) =>
    limb === "both" ? { both: rounded(both), left: rounded(left), right: rounded(right) } : { [limb]: rounded(both) };
  const phase = ({ seconds, grossImpulse, netImpulse, peakForce }: PhaseTruth) => ({
    seconds: rounded(seconds),
    netImpulse: rounded(netImpulse),
    grossImpulse: limbs(grossImpulse),
    peakForce: limbs(peakForce),
  });
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

/** Nine decimals: far below what any detector can see, and the same text on every machine. */
function rounded(value: number): number {
  return Number(value.toFixed(9));
}

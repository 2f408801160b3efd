import type { Act, ActPlan, RecordedActs } from "./act.ts";
import { limbInstants, recordActs, standardGravity } from "./act.ts";
import { buildBody } from "./body.ts";
import type { ContactLaw } from "./contact-law.ts";
import { solveContact } from "./contact-law.ts";
import { afterLandingActs } from "./drop-jump.ts";
import { describeLimbPhase } from "./drop-truth.ts";
import type { HopsOptions } from "./hops-options.ts";
import type { HopsTruth, HopTruth } from "./hops-truth.ts";
import { solveLandingSequence } from "./landing-sequence.ts";
import type { Law } from "./law.ts";
import { flightLaw, lawOfPieces } from "./law.ts";
import type { LimbTakeoff, LimbTouchdown, ShareStage } from "./limb-sharing.ts";
import { createRandom } from "./random.ts";
import { contactShapes, landingShapes } from "./shapes.ts";
import { standAct, stepOnAct } from "./standing-acts.ts";

/** Simulated hops and what really happened in them. */
export interface SimulatedHops extends Omit<RecordedActs<unknown>, "truths"> {
  readonly truth: HopsTruth;
}

/**
 * Simulates repeated hops: standing, an entry jump, the hops, a landing, standing.
 * @throws RangeError when no plausible force law meets the wishes.
 */
export function simulateHops(options: HopsOptions): SimulatedHops {
  const before = options.emptySecondsBefore === undefined ? [] : [stepOnAct(options.emptySecondsBefore)];
  const { truths, ...recording } = recordActs<HopsTruth | undefined>(options, options.rightShares?.standing ?? 0.5, [
    ...before,
    standAct(options.quietSecondsBefore ?? 2.2),
    hopsAct(options),
    ...afterLandingActs(options),
  ]);
  const truth = truths.find((each) => each !== undefined);
  if (truth === undefined) throw new Error("One of the acts is the hops.");
  return { ...recording, truth };
}

/** A bout of hops as a part of a recording: from standing to standing. */
export function hopsAct(options: HopsOptions): Act<HopsTruth> {
  const gravity = options.gravity ?? standardGravity;
  const weightNewtons = options.massKg * gravity;
  const single = options.limb !== "both";
  const lower = options.touchdownLowerMetres ?? 0.005;
  const straightTo = options.straightTo ?? 0.4;
  const positionAtTakeoff = options.positionAtTakeoffMetres ?? (single ? 0.085 : 0.105);
  const rate = options.touchdownRateNewtonsPerSecond ?? clamp(50 * weightNewtons, 11000, 60000);
  const fallRate = options.takeoffRateNewtonsPerSecond ?? clamp(34 * weightNewtons, 12000, 29000);
  const entry = buildBody(
    {
      seed: 0,
      rateHz: 1,
      massKg: options.massKg,
      gravity,
      limb: options.limb,
      plates: "one",
      jumpHeightMetres: options.entryHeightMetres,
      positionAtTakeoffMetres: positionAtTakeoff,
    },
    0,
    createRandom(0),
  );
  const laws: Law[] = [lawOfPieces(entry.push.force, entry.push.motion)];
  const contacts: ContactLaw[] = [];
  let velocity = entry.takeoffVelocity;
  let position = positionAtTakeoff;
  let touchdownVelocity = 0;
  const fly = (): void => {
    touchdownVelocity = -Math.sqrt(velocity * velocity + 2 * gravity * lower);
    laws.push(flightLaw((velocity - touchdownVelocity) / gravity, velocity, position, gravity));
    position -= lower;
  };
  fly();
  for (const hop of options.hops) {
    const shape = contactShapes[hop.contactShape ?? "hump"];
    const takeoffVelocity = Math.sqrt(2 * gravity * hop.jumpHeightMetres);
    // The half sine decides itself how much higher the body leaves than it came.
    const leaves =
      shape.kind === "half-sine"
        ? position + ((touchdownVelocity + takeoffVelocity) / 2) * hop.contactSeconds
        : positionAtTakeoff;
    const contact = solveContact({
      shape,
      gravity,
      seconds: hop.contactSeconds,
      touchdownVelocity,
      takeoffVelocity,
      positionAtTakeoff: leaves,
      touchdownLowerMetres: leaves - position,
      risePerSecond: rate / weightNewtons,
      fallPerSecond: fallRate / weightNewtons,
      straightTo,
    });
    contacts.push(contact);
    laws.push(contact);
    velocity = takeoffVelocity;
    position = leaves;
    fly();
  }
  const landing = solveLandingSequence({
    shape: landingShapes[options.landingShape ?? "ordinary"],
    gravity,
    weightNewtons,
    touchdownVelocity,
    positionAtTouchdown: position,
    touchdownRateNewtonsPerSecond: rate,
    straightTo,
  });
  return {
    laws: [...laws, ...landing.laws],
    plan: (starts) =>
      planHops(options, starts, {
        entry: entry.push,
        contacts,
        landing,
        endOfUnweighting: entry.times.endOfUnweighting,
      }),
    describe: ({ course, limbs }, starts, plan) => {
      const at = (index: number): number => starts[index] ?? Number.NaN;
      const describeContact = (contact: ContactLaw, index: number): HopTruth => {
        const touchdown = at(2 + 2 * index);
        const takeoff = at(3 + 2 * index);
        const lowestPosition = touchdown + contact.lowestPosition;
        const flightSeconds = at(4 + 2 * index) - takeoff;
        const takeoffVelocity = contact.velocity(contact.seconds);
        const flightTimeHeight = (gravity * flightSeconds ** 2) / 8;
        const making = plan.touchdowns?.[index];
        const leaving = plan.takeoffs?.[index + 1];
        const stiffness = contact.springStiffnessPerKg;
        return {
          contactIndex: index + 1,
          touchdown,
          lowestPosition,
          limbTouchdowns: making === undefined ? {} : limbInstants(options.limb, making, "touchdown"),
          touchdownVelocity: contact.velocity(0),
          hop: {
            takeoff,
            limbTakeoffs: leaving === undefined ? {} : limbInstants(options.limb, leaving, "takeoff"),
            contactSeconds: takeoff - touchdown,
            flightSeconds,
            takeoffVelocity,
            jumpHeightMetres: takeoffVelocity ** 2 / (2 * gravity),
            jumpHeightFlightTimeMetres: flightTimeHeight,
            reactiveStrengthIndex: flightTimeHeight / (takeoff - touchdown),
            braking: describeLimbPhase(course, limbs, touchdown, lowestPosition),
            propulsion: describeLimbPhase(course, limbs, lowestPosition, takeoff),
            ...(stiffness === undefined ? {} : { springStiffnessNewtonsPerMetre: options.massKg * stiffness }),
          },
        };
      };
      const last = at(2 + 2 * contacts.length);
      const landingEnd = last + landing.restAfter;
      const making = plan.touchdowns?.at(-1);
      return {
        massKg: options.massKg,
        gravity,
        bodyWeightNewtons: weightNewtons,
        events: { firstMovement: at(0), entryTakeoff: at(1), landingEnd, standingAgain: starts.at(-1) ?? Number.NaN },
        entryHeightMetres: options.entryHeightMetres,
        contacts: [
          ...contacts.map(describeContact),
          {
            contactIndex: contacts.length + 1,
            touchdown: last,
            lowestPosition: landingEnd,
            limbTouchdowns: making === undefined ? {} : limbInstants(options.limb, making, "touchdown"),
            touchdownVelocity,
          },
        ],
      };
    },
  };
}

function planHops(
  options: HopsOptions,
  starts: readonly number[],
  parts: {
    readonly entry: { readonly lowestPosition: number; readonly fallStart: number };
    readonly endOfUnweighting: number;
    readonly contacts: readonly ContactLaw[];
    readonly landing: { readonly firstPeakAfter: number; readonly lastRestAfter: number };
  },
): ActPlan {
  const two = options.limb === "both";
  const shares = options.rightShares ?? { standing: 0.5, braking: 0.5, propulsion: 0.5, landing: 0.5 };
  const landsApart = two ? (options.limbTouchdownDifferenceSeconds ?? 0) : 0;
  const leavesApart = two ? (options.limbTakeoffDifferenceSeconds ?? 0) : 0;
  const at = (index: number): number => starts[index] ?? Number.NaN;
  const firstMovement = at(0);
  const entryTakeoff = at(1);
  const entryLowest = firstMovement + parts.entry.lowestPosition;
  const last = at(starts.length - 2);
  const settled = last + parts.landing.lastRestAfter;
  const settleSeconds = at(starts.length - 1) - settled;
  const stages: ShareStage[] = [
    { from: firstMovement, easeSeconds: parts.endOfUnweighting, share: shares.braking },
    {
      from: entryLowest,
      easeSeconds: (entryTakeoff - entryLowest) / 3,
      share: shares.propulsion,
      impulseTo: entryTakeoff,
    },
  ];
  const touchdowns: LimbTouchdown[] = [];
  const takeoffs: LimbTakeoff[] = [
    { time: entryTakeoff, rightMinusLeftSeconds: 0, fallStart: firstMovement + parts.entry.fallStart },
  ];
  for (const [index, contact] of parts.contacts.entries()) {
    const touchdown = at(2 + 2 * index);
    const takeoff = at(3 + 2 * index);
    const lowest = touchdown + contact.lowestPosition;
    stages.push(
      { from: touchdown, easeSeconds: 0, share: shares.braking, impulseTo: lowest },
      { from: lowest, easeSeconds: (takeoff - lowest) / 3, share: shares.propulsion, impulseTo: takeoff },
    );
    touchdowns.push({
      time: touchdown,
      rightMinusLeftSeconds: landsApart,
      firstPeak: touchdown + contact.firstPeakTime,
    });
    takeoffs.push({ time: takeoff, rightMinusLeftSeconds: leavesApart, fallStart: touchdown + contact.fallStart });
  }
  touchdowns.push({ time: last, rightMinusLeftSeconds: landsApart, firstPeak: last + parts.landing.firstPeakAfter });
  stages.push(
    { from: last, easeSeconds: 0, share: shares.landing },
    { from: settled, easeSeconds: settleSeconds, share: shares.standing },
  );
  return {
    stages,
    touchdowns,
    takeoffs,
    gate: {
      fadeStart: firstMovement,
      fadeSeconds: 0.8 * (entryTakeoff - firstMovement),
      returnStart: settled,
      returnSeconds: settleSeconds,
    },
  };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

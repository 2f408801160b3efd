import { edgeUncertainty, type InputUncertainties } from "../events/input-uncertainties.ts";
import type { contactKeys } from "../events/jump-events.ts";
import { ringDelay } from "../events/ring-delay.ts";
import { type JumpChange, varyJump } from "../events/vary-jump.ts";
import type { Settings } from "../settings.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import { onsetDoubt } from "./onset-doubt.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { endOfUnweightingNoise, restNoise } from "./turning-point-noise.ts";

/**
 * Combined standard uncertainty of every value (JCGM 100:2008, 5.1.2, with the sensitivity of 5.1.3 taken as a finite
 * difference): each input is moved by its own standard uncertainty, everything that follows from it is computed
 * again, and the changes are added in quadrature together with the part that plate noise makes.
 */
export function propagate(
  context: MeasureContext,
  values: readonly RawMeasure[],
  inputs: InputUncertainties,
  measure: (context: MeasureContext) => readonly RawMeasure[],
  settings: Settings,
): readonly number[] {
  const squares = values.map((each) => each.noise ** 2);
  for (const change of changesBy(context, inputs, settings)) {
    const jump = varyJump(context.jump, change, inputs.fixed);
    const varied = measure({ ...context, jump });
    for (let index = 0; index < values.length; index += 1) {
      const own = values[index]!;
      // A value that a small change takes away has no uncertainty that could be stated.
      const moved = sameMeasure(varied, own, index)?.value ?? Number.NaN;
      squares[index]! += (moved - own.value) ** 2;
    }
  }
  return squares.map(Math.sqrt);
}

/** One change for each input that the trial's numbers rest on, by the input's own uncertainty. */
function changesBy(context: MeasureContext, inputs: InputUncertainties, settings: Settings): readonly JumpChange[] {
  const { jump } = context;
  const { onset, endOfUnweighting, lowestPosition, contactTouchdown, takeoff, touchdown, landingEnd } = jump.events;
  const changes: JumpChange[] = [...inputs.motion];
  const edge = (key: (typeof contactKeys)[number], spreads = jump.spreads): number =>
    edgeUncertainty(inputs, key, spreads);
  // Contacts of one bout have one shape: their edges move together.
  if (jump.hops !== undefined) {
    const weight = { weightNewtons: inputs.weightNewtons };
    return [
      weight,
      { hops: { takeoff: Math.hypot(edge("takeoff"), hopRinging(context, settings)) } },
      { hops: { touchdown: edge("touchdown") } },
    ];
  }
  if (onset !== undefined) {
    const doubt = inputs.fixed.has("onset") ? 0 : onsetDoubt(context, settings);
    changes.push({ events: { onset: Math.hypot(inputs.onset, doubt) } });
  }
  if (endOfUnweighting !== undefined) {
    changes.push({ events: { endOfUnweighting: endOfUnweightingNoise(context, endOfUnweighting) } });
  }
  if (lowestPosition !== undefined) {
    changes.push({ events: { lowestPosition: restNoise(context, lowestPosition) } });
  }
  if (landingEnd !== undefined) changes.push({ events: { landingEnd: restNoise(context, landingEnd) } });
  if (contactTouchdown !== undefined) changes.push({ events: { contactTouchdown: edge("contactTouchdown") } });
  const ringing = (signal: ForceSignal, left: number | undefined): number =>
    left === undefined || touchdown === undefined ? 0 : rung(signal, left, touchdown, settings);
  if (takeoff !== undefined) {
    const ofRinging = ringing(jump.motion.signal, takeoff);
    changes.push({ events: { takeoff: Math.hypot(edge("takeoff"), ofRinging) } });
  }
  if (touchdown !== undefined) changes.push({ events: { touchdown: edge("touchdown") } });
  const ofLimbs = jump.contacts.map(({ side, spreads, takeoff: left }): JumpChange => {
    const signal = context.limbs.find((limb) => limb.signal.side === side)?.signal;
    const ofRinging = signal === undefined ? 0 : ringing(signal, left);
    return {
      limbContact: {
        side,
        contactTouchdown: edge("contactTouchdown", spreads),
        takeoff: Math.hypot(edge("takeoff", spreads), ofRinging),
        touchdown: edge("touchdown", spreads),
      },
    };
  });
  return [...changes, ...ofLimbs];
}

/** A take-off lies anywhere within the half period that ringing may hold force up for: rectangular. */
function rung(signal: ForceSignal, takeoff: number, touchdown: number, settings: Settings): number {
  const flight = { start: Math.ceil(takeoff), end: Math.floor(touchdown) };
  return ringDelay(signal, takeoff, flight, settings) / Math.sqrt(3);
}

/** The same for the take-offs of a bout, root mean square: one number stands for all of them. */
function hopRinging({ jump }: MeasureContext, settings: Settings): number {
  const contacts = jump.hops?.contacts ?? [];
  const delays = contacts.flatMap(({ takeoff }, index) => {
    const next = contacts[index + 1]?.touchdown;
    return takeoff === undefined || next === undefined ? [] : [rung(jump.motion.signal, takeoff, next, settings)];
  });
  return Math.sqrt(delays.reduce((sum, each) => sum + each * each, 0) / Math.max(1, delays.length));
}

/** The varied value of a measure: at the same place of the list, unless the change took a measure away. */
function sameMeasure(varied: readonly RawMeasure[], own: RawMeasure, index: number): RawMeasure | undefined {
  const there = varied[index];
  if (there !== undefined && there.id === own.id && there.side === own.side) return there;
  return varied.find((each) => each.id === own.id && each.side === own.side);
}

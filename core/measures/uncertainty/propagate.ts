import { edgeUncertainty, type InputUncertainties, onsetUncertainty } from "../../events/input-uncertainties.ts";
import type { contactKeys, JumpMotion } from "../../events/jump-events.ts";
import { endOfUnweightingNoise, restNoise } from "../../events/turning-point-noise.ts";
import { type JumpChange, varyJump } from "../../events/vary-jump.ts";
import type { Settings } from "../../settings/settings.ts";
import type { MeasureContext, RawMeasure } from "../raw-measure.ts";
import { totalNoise } from "./force-noise.ts";

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
  const after = (change: JumpChange): readonly RawMeasure[] =>
    measure({ ...context, jump: varyJump(context.jump, change, inputs.fixed, settings) });
  for (const change of changesBy(context, inputs, settings)) {
    const varied = after(change);
    const back = reversed(change, context.jump);
    const against = back === undefined ? undefined : after(back);
    for (let index = 0; index < values.length; index += 1) {
      const own = values[index]!;
      // A value that a small change takes away has no uncertainty that could be stated.
      const moved = ((sameMeasure(varied, own, index)?.value ?? Number.NaN) - own.value) ** 2;
      const other = against === undefined ? undefined : sameMeasure(against, own, index);
      squares[index]! += other === undefined ? moved : (moved + (other.value - own.value) ** 2) / 2;
    }
  }
  return squares.map(Math.sqrt);
}

/**
 * The change the other way, where it moves the lowest position: force falls or rises steeply there, and one noisy sample
 * beside it makes the slope on one side alone too small. The mean of both squares stands for the change.
 */
function reversed({ weightNewtons, startVelocity, events }: JumpChange, jump: JumpMotion): JumpChange | undefined {
  if (jump.events.lowestPosition === undefined) return undefined;
  if (events?.lowestPosition !== undefined) return { events: { lowestPosition: -events.lowestPosition } };
  if (weightNewtons === undefined && startVelocity === undefined) return undefined;
  return {
    ...(weightNewtons === undefined ? {} : { weightNewtons: -weightNewtons }),
    ...(startVelocity === undefined ? {} : { startVelocity: -startVelocity }),
  };
}

/**
 * One change for each input that the trial's numbers rest on, by the input's own uncertainty. Contact events are moved
 * out of the contact: within it the force at the event rises with it, as it would not had the contact begun there.
 */
function changesBy(context: MeasureContext, inputs: InputUncertainties, settings: Settings): readonly JumpChange[] {
  const { jump, noiseNewtons } = context;
  const { onset, endOfUnweighting, lowestPosition, contactTouchdown, takeoff, touchdown, landingEnd } = jump.events;
  const changes: JumpChange[] = [...inputs.motion];
  const edge = (key: (typeof contactKeys)[number], spreads = jump.spreads): number =>
    edgeUncertainty(inputs, key, spreads);
  // Contacts of one bout have one shape: their edges move together.
  if (jump.hops !== undefined) {
    const weight = { weightNewtons: inputs.weightNewtons };
    return [weight, { hops: { takeoff: edge("takeoff") } }, { hops: { touchdown: -edge("touchdown") } }];
  }
  if (onset !== undefined) changes.push({ events: { onset: onsetUncertainty(inputs, jump) } });
  if (endOfUnweighting !== undefined) {
    const { white, point } = totalNoise(context, settings);
    changes.push({
      events: { endOfUnweighting: endOfUnweightingNoise(jump, endOfUnweighting, white, point, settings) },
    });
  }
  if (lowestPosition !== undefined) {
    changes.push({ events: { lowestPosition: restNoise(jump, lowestPosition, noiseNewtons, settings) } });
  }
  if (landingEnd !== undefined)
    changes.push({ events: { landingEnd: restNoise(jump, landingEnd, noiseNewtons, settings) } });
  if (contactTouchdown !== undefined) changes.push({ events: { contactTouchdown: -edge("contactTouchdown") } });
  if (takeoff !== undefined) changes.push({ events: { takeoff: edge("takeoff") } });
  if (touchdown !== undefined) changes.push({ events: { touchdown: -edge("touchdown") } });
  const ofLimbs = jump.contacts.map(
    ({ side, spreads }): JumpChange => ({
      limbContact: {
        side,
        contactTouchdown: -edge("contactTouchdown", spreads),
        takeoff: edge("takeoff", spreads),
        touchdown: -edge("touchdown", spreads),
      },
    }),
  );
  return [...changes, ...ofLimbs];
}

/** The varied value of a measure: at the same place of the list, unless the change took a measure away. */
function sameMeasure(varied: readonly RawMeasure[], own: RawMeasure, index: number): RawMeasure | undefined {
  const there = varied[index];
  if (there !== undefined && there.id === own.id && there.side === own.side) return there;
  return varied.find((each) => each.id === own.id && each.side === own.side);
}

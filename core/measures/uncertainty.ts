import { edgeUncertainty, type InputUncertainties, onsetUncertainty } from "../events/input-uncertainties.ts";
import type { contactKeys } from "../events/jump-events.ts";
import { endOfUnweightingNoise, restNoise } from "../events/turning-point-noise.ts";
import { type JumpChange, varyJump } from "../events/vary-jump.ts";
import { totalNoise } from "./force-noise.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";

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
): readonly number[] {
  const squares = values.map((each) => each.noise ** 2);
  for (const change of changesBy(context, inputs)) {
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
function changesBy(context: MeasureContext, inputs: InputUncertainties): readonly JumpChange[] {
  const { jump, noiseNewtons } = context;
  const { onset, endOfUnweighting, lowestPosition, contactTouchdown, takeoff, touchdown, landingEnd } = jump.events;
  const changes: JumpChange[] = [...inputs.motion];
  const edge = (key: (typeof contactKeys)[number], spreads = jump.spreads): number =>
    edgeUncertainty(inputs, key, spreads);
  // Contacts of one bout have one shape: their edges move together.
  if (jump.hops !== undefined) {
    const weight = { weightNewtons: inputs.weightNewtons };
    return [weight, { hops: { takeoff: edge("takeoff") } }, { hops: { touchdown: edge("touchdown") } }];
  }
  if (onset !== undefined) changes.push({ events: { onset: onsetUncertainty(inputs, jump) } });
  if (endOfUnweighting !== undefined) {
    const { white, point } = totalNoise(context);
    changes.push({ events: { endOfUnweighting: endOfUnweightingNoise(jump, endOfUnweighting, white, point) } });
  }
  if (lowestPosition !== undefined) {
    changes.push({ events: { lowestPosition: restNoise(jump, lowestPosition, noiseNewtons) } });
  }
  if (landingEnd !== undefined) changes.push({ events: { landingEnd: restNoise(jump, landingEnd, noiseNewtons) } });
  if (contactTouchdown !== undefined) changes.push({ events: { contactTouchdown: edge("contactTouchdown") } });
  if (takeoff !== undefined) changes.push({ events: { takeoff: edge("takeoff") } });
  if (touchdown !== undefined) changes.push({ events: { touchdown: edge("touchdown") } });
  const ofLimbs = jump.contacts.map(
    ({ side, spreads }): JumpChange => ({
      limbContact: {
        side,
        contactTouchdown: edge("contactTouchdown", spreads),
        takeoff: edge("takeoff", spreads),
        touchdown: edge("touchdown", spreads),
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

import { edgeUncertainty, type InputUncertainties } from "../events/input-uncertainties.ts";
import type { contactKeys } from "../events/jump-events.ts";
import { type JumpChange, varyJump } from "../events/vary-jump.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { endOfUnweightingNoise, lowestPositionNoise } from "./turning-point-noise.ts";

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
  const { jump } = context;
  const { onset, endOfUnweighting, lowestPosition, contactTouchdown, takeoff, touchdown } = jump.events;
  const changes: JumpChange[] = [];
  const edge = (key: (typeof contactKeys)[number], spreads = jump.spreads): number =>
    edgeUncertainty(inputs, key, spreads);
  if (inputs.weightNewtons !== 0) changes.push({ weightNewtons: inputs.weightNewtons });
  // Contacts of one bout have one shape: their edges move together.
  if (jump.hops !== undefined) {
    return [...changes, { hops: { takeoff: edge("takeoff") } }, { hops: { touchdown: edge("touchdown") } }];
  }
  if (inputs.startVelocity !== 0) changes.push({ startVelocity: inputs.startVelocity });
  if (onset !== undefined) changes.push({ events: { onset: inputs.onset } });
  if (endOfUnweighting !== undefined) {
    changes.push({ events: { endOfUnweighting: endOfUnweightingNoise(context, endOfUnweighting) } });
  }
  if (lowestPosition !== undefined) {
    changes.push({ events: { lowestPosition: lowestPositionNoise(context, lowestPosition) } });
  }
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

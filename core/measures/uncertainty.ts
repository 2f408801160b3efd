import type { InputUncertainties } from "../events/input-uncertainties.ts";
import { type JumpChange, varyJump } from "../events/vary-jump.ts";
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
  const changes: JumpChange[] = [
    { weightNewtons: inputs.weightNewtons },
    { startVelocity: inputs.startVelocity },
    { onset: inputs.onset },
    { takeoff: inputs.takeoff },
    { touchdown: inputs.touchdown },
    ...context.limbs.map(({ signal: { side } }) => ({
      limbContact: { side, takeoff: inputs.takeoff, touchdown: inputs.touchdown },
    })),
  ];
  for (const change of changes) {
    if (Object.values(change).every((amount) => amount === 0)) continue;
    const jump = varyJump(context.jump, change, inputs.window, inputs.fixed);
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

/** The varied value of a measure: at the same place of the list, unless the change took a measure away. */
function sameMeasure(varied: readonly RawMeasure[], own: RawMeasure, index: number): RawMeasure | undefined {
  const there = varied[index];
  if (there !== undefined && there.id === own.id && there.side === own.side) return there;
  return varied.find((each) => each.id === own.id && each.side === own.side);
}

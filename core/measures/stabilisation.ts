import { zeroLagFilter } from "../recording/zero-lag-filter.ts";
import type { Settings } from "../settings/settings.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";

/**
 * Time from touchdown to the start of the first second within ± 5 % of body weight, force low-passed at 20 Hz
 * (METHODS §5). Information only: the recipe and the recording's length decide much of it (Fransz et al. 2015).
 */
export function measureStabilisation(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { events, motion } = context.jump;
  const { touchdown } = events;
  const { force, rateHz } = motion.signal;
  if (touchdown === undefined) return [];
  const first = Math.ceil(touchdown);
  const end = motion.startSample + motion.impulse.length;
  if ((end - touchdown) / rateHz < settings.stabilisationNeedsSeconds) return [];
  const smooth = zeroLagFilter(force.subarray(first, end), rateHz, settings.stabilisationFilterHz, settings);
  const band = settings.stabilisationBandFraction * motion.weightNewtons;
  const needed = Math.round(settings.stabilisationSeconds * rateHz);
  let since = -1;
  for (let index = 0; index < smooth.length; index += 1) {
    const stable = Math.abs(smooth[index]! - motion.weightNewtons) <= band;
    if (!stable) since = -1;
    else if (since < 0) since = index;
    if (since >= 0 && index - since + 1 >= needed) {
      const value = (first + since - touchdown) / rateHz;
      return [{ id: "timeToStabilisation", side: context.limb, value, noise: 0 }];
    }
  }
  return [];
}

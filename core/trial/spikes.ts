import type { Settings } from "../settings/settings.ts";

/**
 * Samples that stand alone: away from the cubic through their four neighbours by more than `spikeNewtons`, and by
 * more than `spikeSlopes` times the steepest change around them. No force between foot and plate lasts one sample.
 */
export function findSpikes(force: Float64Array, settings: Settings): readonly number[] {
  const found: number[] = [];
  const leastBend = settings.spikeNewtons / 2;
  const end = force.length - 2;
  let here = force[1] ?? 0;
  let after = force[2] ?? 0;
  for (let index = 2; index < end; index += 1) {
    const before = here;
    here = after;
    after = force[index + 1]!;
    // Cheap first look: most samples lie between their neighbours.
    const bend = here - (before + after) / 2;
    if (bend < leastBend && bend > -leastBend) continue;
    const expected = (4 * (before + after) - force[index - 2]! - force[index + 2]!) / 6;
    const away = Math.abs(here - expected);
    const steepest = Math.max(
      Math.abs(before - force[index - 2]!),
      Math.abs(force[index + 2]! - after),
      Math.abs(after - before) / 2,
    );
    if (away > Math.max(settings.spikeNewtons, settings.spikeSlopes * steepest)) found.push(index);
  }
  return found;
}

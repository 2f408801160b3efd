import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import { meanAndDeviation } from "./force-signal.ts";
import type { PreparedRecording } from "./prepare-recording.ts";

/**
 * The plate that alone carries the landing of a jump whose push another plate carried alone; undefined where the same
 * plate or both carry it, and where there is no landing.
 */
export function otherLandingPlate(
  { recording, forces }: PreparedRecording,
  cut: JumpCut,
  pushPlate: string | undefined,
  settings: Settings,
): string | undefined {
  if (pushPlate === undefined || cut.kind === "landing" || !cut.landed) return undefined;
  const { start } = cut.landing;
  const end = Math.min(cut.landing.end, start + Math.round(settings.landingPlateSeconds * recording.rateHz));
  if (end - start < 2) return undefined;
  const loads = forces.map((force) => meanAndDeviation(force, start, end).mean);
  const total = loads.reduce((sum, load) => sum + load, 0);
  const least = Math.max(settings.otherFootNewtons, settings.otherFootFraction * total);
  const carrying = recording.plates.filter((_, index) => loads[index]! > least).map(({ name }) => name);
  return carrying.length === 1 && carrying[0] !== pushPlate ? carrying[0] : undefined;
}

import type { TrialEvent } from "../events/event.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { oppositeSide, type Side } from "../ground/limb.ts";
import { startsFromBox, type TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";

/**
 * Says when the first touchdown off a box shows the other foot well before the stated leading leg, each on its own
 * plate. Nothing on one plate, where no leg was stated, or where the feet land too near each other to tell.
 */
export function leadingLegFindings(
  stated: Side | undefined,
  events: readonly TrialEvent[],
  test: TestKind,
  settings: Settings,
): readonly Finding[] {
  if (stated === undefined || !startsFromBox(test)) return [];
  const landed = (side: Side): TrialEvent | undefined =>
    events.find((event) => event.name === "touchdown" && event.contactIndex === 1 && event.side === side);
  const lead = landed(stated);
  const other = landed(oppositeSide(stated));
  if (lead === undefined || other === undefined) return [];
  const earlier = lead.time - other.time;
  const uncertainty = Math.hypot(lead.uncertainty ?? 0, other.uncertainty ?? 0);
  if (earlier < settings.leadingLegTouchdownSeconds || earlier < settings.leadingLegSd * uncertainty) return [];
  return [
    finding(
      "leading-leg-contradicted",
      "warning",
      { stated, earlierSeconds: earlier, uncertaintySeconds: uncertainty },
      { place: { at: "time", seconds: other.time, decimals: 2 } },
    ),
  ];
}

import type { TrialEvent } from "../events/event.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
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
    proseFinding(
      "leading-leg-contradicted",
      "warning",
      `The ${stated} leg is stated to lead, but the plate called the ${oppositeSide(stated)} foot's is met ${milliseconds(earlier)} ms before the other (± ${milliseconds(uncertainty)} ms).`,
      "Check which leg stepped off first, and which foot stood on which plate; state what is right.",
      { where: `${other.time.toFixed(2)} s` },
    ),
  ];
}

function milliseconds(seconds: number): string {
  return (1000 * seconds).toFixed(1);
}

import type { Undetected } from "../events/detection.ts";
import type { TrialEvent } from "../events/event.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import { english } from "../words/english.ts";

/** Refuses a trial of which an event could not be found. */
export function undetectedFinding({ missing, atSample }: Undetected, test: TestKind, rateHz: number): Finding {
  const where = `${(atSample / rateHz).toFixed(2)} s`;
  if (missing === "onset") {
    return proseFinding(
      "starts-moving",
      "refusal",
      "The recording starts in mid-movement: force never was at body weight before the movement.",
      "Start the recording two seconds before the jump.",
      { where },
    );
  }
  return proseFinding(
    "event-not-found",
    "refusal",
    `No ${missing} is found near ${where}.`,
    `Check that this trial is what it is called: ${english.tests.label(test)}.`,
    { where },
  );
}

/** Says which events a person has moved, where they stand now, and which edits belong to no event of the trial. */
export function movedFindings(edits: readonly EventEdit[], events: readonly TrialEvent[]): readonly Finding[] {
  const moved = events.filter((event) => event.from === "edited");
  const own = edits.map((edit) => ({ edit, event: movedBy(moved, edit) }));
  return own.map(({ edit, event }, at) => {
    const label = `${english.events.label(edit.name)}${edit.contactIndex === undefined ? "" : ` of contact ${edit.contactIndex}`}`;
    const wanted = `${edit.time.toFixed(4)} s`;
    if (event === undefined || own.slice(at + 1).some((later) => later.event === event)) {
      return proseFinding(
        "session-entry-unused",
        "warning",
        `The ${label} moved to ${wanted} ${event === undefined ? "is no event of this trial" : "was moved again later"}; this edit was not used.`,
        "Remove the edit.",
        { where: wanted },
      );
    }
    const stands = `${event.time.toFixed(4)} s`;
    return proseFinding(
      "event-moved",
      "note",
      stands === wanted
        ? `The ${label} was moved by hand to ${stands}.`
        : `The ${label} was moved by hand to ${wanted}, beyond its neighbours; it stands at ${stands}.`,
      "Reset it to the detected place if this was not meant.",
      { where: stands },
    );
  });
}

/** Without a contact's number the last event of its name is meant: the landing. */
function movedBy(moved: readonly TrialEvent[], { name, contactIndex }: EventEdit): TrialEvent | undefined {
  return moved.findLast(
    (event) => event.name === name && (contactIndex === undefined || (event.contactIndex ?? 1) === contactIndex),
  );
}

/** Says that a standing load is no athlete's, so that its unit or scale is wrong. */
export function implausibleWeight(massKg: number, settings: Settings): Finding | undefined {
  if (massKg <= settings.bodyMassMaximumKg) return undefined;
  return proseFinding(
    "weight-implausible",
    "refusal",
    `The standing load would be an athlete of ${massKg.toFixed(0)} kg, so the unit of force or its scale is wrong.`,
    "Check the unit of the force columns and state it (--unit N).",
  );
}

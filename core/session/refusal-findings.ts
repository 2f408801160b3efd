import type { Undetected } from "../events/detection.ts";
import type { TrialEvent } from "../events/event.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { EventEdit } from "../stated/event-edit.ts";

/** Refuses a trial of which an event could not be found. */
export function undetectedFinding({ missing, atSample }: Undetected, test: TestKind, rateHz: number): Finding {
  const seconds = atSample / rateHz;
  const place = { at: "time", seconds, decimals: 2 } as const;
  if (missing === "onset") return finding("starts-moving/onset", "refusal", {}, { place });
  return finding("event-not-found", "refusal", { missing, seconds, test }, { place });
}

/** Says which events a person has moved, where they stand now, and which edits belong to no event of the trial. */
export function movedFindings(edits: readonly EventEdit[], events: readonly TrialEvent[]): readonly Finding[] {
  const moved = events.filter((event) => event.from === "edited");
  const own = edits.map((edit) => ({ edit, event: movedBy(moved, edit) }));
  return own.map(({ edit, event }, at) => {
    const { name, contactIndex, time: wantedSeconds } = edit;
    const figures = { name, ...(contactIndex === undefined ? {} : { contactIndex }), wantedSeconds };
    if (event === undefined || own.slice(at + 1).some((later) => later.event === event)) {
      const place = { at: "time", seconds: wantedSeconds, decimals: 4 } as const;
      return finding("session-entry-unused/edit", "warning", { ...figures, isNoEvent: event === undefined }, { place });
    }
    const standsSeconds = event.time;
    const place = { at: "time", seconds: standsSeconds, decimals: 4 } as const;
    return finding("event-moved", "note", { ...figures, standsSeconds }, { place });
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
  return finding("weight-implausible", "refusal", { massKg }, { answers: [{ unit: "N" }] });
}

import type { SessionDescription } from "../../core/stated/session.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { JournalAction } from "./journal-actions.ts";
import type { Register } from "./register.ts";
import { sessionContent, statedFiles } from "./session-conversion.ts";

/**
 * Makes a session's records say what a changed description says, in one action: the bridge between the screens, which
 * edit descriptions, and the register, which keeps records. Only records that say something new are written. The
 * athlete's own record is not changed here.
 */
export function describeSession(
  register: Register,
  id: string,
  description: SessionDescription,
  action: JournalAction,
): void {
  const described = register.reads.describedSession(id);
  if (described === undefined)
    throw new RequestRefused("This session is no longer in the register; nothing was changed.");
  const { session, recordings, trials } = described;
  const { who: user, by, now } = register.circumstances;
  const who = by ?? user;
  const at = now().toISOString();
  const paths = new Set(recordings.map(({ content }) => content.path));
  const stated = statedFiles(description.files ?? [], paths);
  register.writes.act(action, (changes) => {
    const content = sessionContent(session.content, description, described.athlete?.content, stated.others);
    changes.change("sessions", id, content);
    for (const recording of recordings) {
      const { stated: _stated, position: _position, ...kept } = recording.content;
      changes.change("recordings", recording.id, { ...kept, ...stated.whole.get(kept.path) });
    }
    const recordingIds = new Map(recordings.map((each) => [each.content.path, each.id]));
    const spokenOf = new Set<string>();
    for (const { path, number, ...said } of stated.trials) {
      const recording = recordingIds.get(path);
      if (recording === undefined) continue;
      const known = trials.find((each) => each.references.recording === recording && each.content.number === number);
      const before = known?.content.stated ?? {};
      const isNewlySeen = said.stated.seen === true && before.seen !== true;
      const isNewlyKept = said.stated.kept === true && before.kept !== true;
      const isNewlyExcluded =
        said.stated.excluded !== undefined && before.excluded?.reason !== said.stated.excluded.reason;
      const { seenBy, seenAt, excludedBy, excludedAt, keptBy, keptAt, ...kept } = known?.content ?? {};
      const trial = {
        ...kept,
        number,
        ...said,
        ...(said.stated.seen && (isNewlySeen ? { seenBy: who, seenAt: at } : given({ seenBy, seenAt }))),
        ...(said.stated.excluded &&
          (isNewlyExcluded ? { excludedBy: who, excludedAt: at } : given({ excludedBy, excludedAt }))),
        ...(said.stated.kept && (isNewlyKept ? { keptBy: who, keptAt: at } : given({ keptBy, keptAt }))),
      };
      if (known === undefined) changes.add("trials", { recording }, trial);
      else {
        changes.change("trials", known.id, trial);
        spokenOf.add(known.id);
      }
    }
    for (const { id: trial } of trials) if (!spokenOf.has(trial)) changes.moveToBin({ kind: "trials", id: trial });
  });
}

function given<Part extends object>(part: Part): { [Key in keyof Part]?: NonNullable<Part[Key]> } {
  const entries = Object.entries(part).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { [Key in keyof Part]?: NonNullable<Part[Key]> };
}

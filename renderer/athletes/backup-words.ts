import type { BackupPreview } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.backups;
const counts = words.screens.counts;

/** What a backup holds, and what will protect it, in a few sentences. */
export function previewWords(preview: BackupPreview): string {
  const { athletes, sessions, recordings, lastChange } = preview;
  const holds = [counts.athletes(athletes), counts.sessions(sessions), counts.recordings(recordings)].join(", ");
  const changed =
    lastChange === "" ? "" : prose.lastChanged(dateWords(lastChange.slice(0, 10)), lastChange.slice(11, 16));
  return prose.itHolds(holds, changed, preview.protectionSentence);
}

import { countOf } from "../../core/ground/plain-words.ts";
import type { BackupPreview } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";

/** What a backup holds, and what will protect it, in a few sentences. */
export function previewWords(preview: BackupPreview): string {
  const { athletes, sessions, recordings, lastChange } = preview;
  const holds = [countOf(athletes, "athlete"), countOf(sessions, "session"), countOf(recordings, "recording")].join(
    ", ",
  );
  const changed =
    lastChange === "" ? "" : ` Last changed ${dateWords(lastChange.slice(0, 10))}, ${lastChange.slice(11, 16)} UTC.`;
  return `It holds ${holds}.${changed} ${preview.protectionSentence}`;
}

import { countOf } from "../../core/plain-words.ts";
import type { BackupPreview } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";

/** The name of a backup's file in words: "2 Nov 2026, 08:01 UTC, made daily". */
export function backupWords(name: string): string {
  const parts = /^(.*?)-(\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})/.exec(name);
  if (parts === null) return name;
  const [, reason = "", date = "", hour = "", minute = ""] = parts;
  return `${dateWords(date)}, ${hour}:${minute} UTC, ${reasonWords(reason)}`;
}

function reasonWords(reason: string): string {
  if (reason === "daily") return "made daily";
  if (reason === "before-restoring") return "made before going back to a backup";
  return reason.startsWith("before-schema") ? "made before the register was brought up to date" : reason;
}

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

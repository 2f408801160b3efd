import type { KnownCopy } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.backups;

const kinds: Readonly<Record<KnownCopy["kind"], string>> = {
  "kept daily": prose.madeDaily,
  "kept before a migration": prose.madeBeforeUpdate,
  "kept before a restoration": prose.madeBeforeGoingBack,
  "kept, put there by hand": prose.putAmongBackupsByHand,
  "backup elsewhere": prose.backupElsewhere,
  "archive elsewhere": prose.archiveOfRegister,
};

/** What a copy is and when it was made: "Made daily, 2 Nov 2026, 08:01 UTC". */
export function copyTitle({ kind, athlete, madeAt }: KnownCopy): string {
  const what = athlete === undefined ? kinds[kind] : prose.archiveOfAlone(athlete);
  return madeAt === undefined ? what : `${what}, ${timeWords(madeAt)}`;
}

/** An ISO time to the minute: "2 Nov 2026, 08:01 UTC". */
export function timeWords(time: string): string {
  return prose.atTime(dateWords(time.slice(0, 10)), time.slice(11, 16));
}

/** "0.2 MB". */
export function bytesWords(bytes: number): string {
  return prose.megabytes((bytes / 1e6).toFixed(1));
}

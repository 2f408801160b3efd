import type { KnownCopy } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";

const kinds: Readonly<Record<KnownCopy["kind"], string>> = {
  "kept daily": "Made daily",
  "kept before a migration": "Made before the register was brought up to date",
  "kept before a restoration": "Made before going back to a backup",
  "kept, put there by hand": "Put among the backups by hand",
  "backup elsewhere": "Backup elsewhere",
  "archive elsewhere": "Archive of the register",
};

/** What a copy is and when it was made: "Made daily, 2 Nov 2026, 08:01 UTC". */
export function copyTitle({ kind, athlete, madeAt }: KnownCopy): string {
  const what = athlete === undefined ? kinds[kind] : `Archive of ${athlete} alone`;
  return madeAt === undefined ? what : `${what}, ${timeWords(madeAt)}`;
}

/** An ISO time to the minute: "2 Nov 2026, 08:01 UTC". */
export function timeWords(time: string): string {
  return `${dateWords(time.slice(0, 10))}, ${time.slice(11, 16)} UTC`;
}

/** "0.2 MB". */
export function bytesWords(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

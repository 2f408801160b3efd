import type { CheckedCopy, KnownCopy } from "../register-views.ts";

/** Copies in words, the same on every screen and on the command line. No Node imports. */

const protections: Readonly<Record<KnownCopy["protection"], string>> = {
  none: "no passphrase",
  "this passphrase": "the register's passphrase",
  "an earlier passphrase": "an earlier passphrase of the register",
  "a passphrase of its own": "a passphrase of its own",
  "not known": "not known",
};

/** What whoever has it needs to read it. */
export function protectionWords({ protection }: KnownCopy): string {
  return protections[protection];
}

const extents = {
  structure: "the file's structure",
  checksums: "all but its contents",
  everything: "everything",
} as const;

/**
 * When it was checked, how far, and whether that was well.
 * @param timeWords an ISO time as the reader is used to it
 */
export function checkWords({ verifiedAt, found }: KnownCopy, timeWords: (time: string) => string): string {
  if (verifiedAt === undefined || found === undefined) return "never checked";
  const { extent, problems, writtenSince } = found;
  const outcome = problems.length > 0 ? "damaged" : `${extents[extent]}, sound`;
  return `checked ${timeWords(verifiedAt)}: ${outcome}${writtenSince ? "; the file was written again since" : ""}`;
}

/** Everything about a copy that a person must know, a sentence each. */
export function copyTroubles({ because, stale, found }: KnownCopy): readonly string[] {
  return [
    ...(because === undefined ? [] : [because]),
    ...stale.map(({ sentence }) => sentence),
    ...(found?.problems.map((problem) => `Damaged: ${problem}`) ?? []),
  ];
}

/** What was found just now, in a sentence. */
export function checkedWords({ copy, notChecked, isKept }: CheckedCopy): string {
  const problems = copy.found?.problems.length ?? 0;
  const outcome = problems > 0 ? "It is damaged." : "It is sound.";
  const kept = isKept ? "" : " When that was could not be kept: the register is open for reading only.";
  if (copy.state === "unreachable") return notChecked ?? "";
  return notChecked === undefined ? `${outcome}${kept}` : `${notChecked}${kept}`;
}

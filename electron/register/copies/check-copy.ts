import { statSync } from "node:fs";
import { RequestRefused } from "../../refusals/request-refused.ts";
import { archiveLimits } from "../archive/archive-limits.ts";
import { withArchive } from "../archive/read-archive.ts";
import { withUnsealed } from "../backups.ts";
import type { Connection } from "../connection.ts";
import { checkFile } from "../copy-database.ts";
import { ownKeyOf } from "../kept-backups.ts";
import { contentsOf } from "../keys/contents.ts";
import type { Register } from "../register.ts";
import { readFact } from "../register-facts.ts";
import type { CheckedCopy, KnownCopy } from "../register-views.ts";
import { StaysSealed } from "../sealed-file.ts";
import { keysOfCopies } from "../unfinished.ts";
import { verifyRegister } from "../verify-register.ts";
import { type CopyCheck, checkOf } from "./check-schema.ts";
import { noteKeptCheck } from "./kept-checks.ts";
import { listCopies, notesOf } from "./list-copies.ts";
import { withoutAdvice } from "./open-copy.ts";

/**
 * Checks one copy as far as the keys at hand go, and keeps when that was and what was found.
 * @param passphrase opens the envelope of one that has a passphrase of its own
 * @throws RequestRefused when no such copy is known, or it was found well but that could not be written down
 */
export async function checkCopy(register: Register, key: string, passphrase?: Uint8Array): Promise<CheckedCopy> {
  const copy = copyOf(register, key);
  if (copy.state === "unreachable") return { key, copy, notChecked: "It cannot be reached.", isKept: false };
  const { mtimeMs } = statSync(copy.path);
  let found: Finding;
  try {
    found =
      copy.kind === "archive elsewhere"
        ? await findInArchive(copy.path, passphrase)
        : await findInBackup(register, copy.path, passphrase);
  } catch (error) {
    if (!(error instanceof StaysSealed)) throw error;
    const why = passphrase === undefined ? "it is under a passphrase of its own" : firstSmall(error.message);
    return { key, copy, notChecked: `Its envelope was not opened: ${why.replace(/\.$/, "")}.`, isKept: false };
  }
  const check = {
    verifiedAt: register.circumstances.now().toISOString(),
    found: checkOf(found.extent, found.problems, mtimeMs),
  };
  const isKept = keep(register, copy, check);
  const { extent, problems } = check.found;
  return {
    key,
    copy: { ...copyOf(register, key), verifiedAt: check.verifiedAt, found: { extent, problems, writtenSince: false } },
    ...(found.notChecked !== undefined && { notChecked: found.notChecked }),
    isKept,
  };
}

interface Finding {
  readonly extent: CopyCheck["extent"];
  readonly problems: readonly string[];
  /** What of it was left out. */
  readonly notChecked?: string;
}

function copyOf(register: Register, key: string): KnownCopy {
  const copy = listCopies(register).copies.find((each) => each.key === key);
  if (copy === undefined) throw new RequestRefused("There is no such copy in the list; nothing was changed.");
  return copy;
}

function findInBackup(register: Register, path: string, passphrase: Uint8Array | undefined): Promise<Finding> {
  return withUnsealed(path, passphrase, register.file, (backup) => {
    const problems: string[] = [];
    try {
      checkFile(backup);
      return findInDatabase(backup, keysOfCopies(register));
    } catch (error) {
      if (!(error instanceof RequestRefused)) throw error;
      problems.push(withoutAdvice(error.message));
    }
    return { extent: "structure", problems };
  });
}

function findInDatabase(backup: Connection, known: readonly Uint8Array[]): Finding {
  const key = keyAtHand(backup, known);
  const contents = contentsOf(backup, key === "none at hand" ? undefined : key);
  const isReadable = key !== "none at hand";
  try {
    const { problems } = verifyRegister(contents.store, contents.journal, contents.lines, isReadable);
    return isReadable
      ? { extent: "everything", problems }
      : { extent: "checksums", problems, notChecked: "Its contents were not decrypted: its key is not at hand." };
  } finally {
    contents.protection.forget();
  }
}

function keyAtHand(backup: Connection, known: readonly Uint8Array[]): Uint8Array | undefined | "none at hand" {
  if (readFact(backup, "protection") === undefined) return undefined;
  try {
    return ownKeyOf(backup, known);
  } catch (error) {
    if (error instanceof RequestRefused) return "none at hand";
    throw error;
  }
}

async function findInArchive(path: string, passphrase: Uint8Array | undefined): Promise<Finding> {
  try {
    await withArchive(path, passphrase, ({ names, listed, bytesOf }) => {
      // What is larger was looked at in pieces before it was lent.
      const rest = names.filter((name) => (listed(name)?.bytes ?? 0) <= archiveLimits.readInPieces);
      for (const name of rest) bytesOf(name);
    });
    return { extent: "everything", problems: [] };
  } catch (error) {
    if (error instanceof StaysSealed || !(error instanceof RequestRefused)) throw error;
    return { extent: "structure", problems: [error.message.replace(/[;.] [Nn]othing of it was used\.$/, ".")] };
  }
}

/** @returns false where nothing can be kept */
function keep(register: Register, copy: KnownCopy, check: { readonly verifiedAt: string; readonly found: CopyCheck }) {
  if (register.readOnlyBecause !== undefined) return false;
  const [note] = register.locked ? [] : notesOf(register, copy.key).filter(({ id }) => id === copy.key);
  if (note === undefined) noteKeptCheck(register, copy.path, check);
  else
    register.writes.act("copy checked", (changes) => changes.change("copies", note.id, { ...note.content, ...check }));
  return true;
}

function firstSmall(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

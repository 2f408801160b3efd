import { RequestRefused } from "../../refusals/request-refused.ts";
import { Connection } from "../connection.ts";
import { applicationId, applicationOf } from "../migrations.ts";
import type { WrappedKey } from "../passphrase-key.ts";
import { presentKinds } from "../present-kinds.ts";
import type { RecordKey } from "../record-tables.ts";
import { readFact, registerId } from "../register-facts.ts";
import { lastShared, type Moment } from "./past.ts";

/** What a copy that is a database says of itself; needs no key. */
export interface OpenedCopy {
  /** It is of this register, and not of another one. */
  readonly isOwn: boolean;
  readonly protection: WrappedKey | undefined;
  /** The last entry of its journal that is the register's, too. */
  readonly shared: Moment | undefined;
  /** Which of some records are still in it. */
  readonly holds: ReadonlySet<string>;
}

/**
 * Looks into a copy.
 * @param erased what was erased from the register
 * @returns why it cannot be opened, in a sentence
 */
export function openCopy(register: Connection, path: string, erased: readonly RecordKey[]): OpenedCopy | string {
  try {
    const copy = new Connection(path, { readOnly: true });
    try {
      if (applicationOf(copy) !== applicationId) return "It holds a database that is no register.";
      const isOwn = registerId(copy) === registerId(register);
      const protection = readFact(copy, "protection");
      if (!isOwn) return { isOwn, protection, shared: undefined, holds: new Set() };
      return { isOwn, protection, shared: lastShared(register, copy), holds: recordsIn(copy, erased) };
    } finally {
      copy.close();
    }
  } catch (error) {
    if (error instanceof RequestRefused) return `It cannot be opened: ${withoutAdvice(error.message)}`;
    throw error;
  }
}

function recordsIn(copy: Connection, records: readonly RecordKey[]): ReadonlySet<string> {
  const present = new Set(presentKinds(copy));
  const found = records.filter(
    ({ kind, id }) => present.has(kind) && copy.one(`SELECT id FROM ${kind} WHERE id = ?`, id) !== undefined,
  );
  return new Set(found.map(({ id }) => id));
}

/** What is said of a register that is damaged ends in advice to restore a backup; this may be that backup. */
export function withoutAdvice(sentence: string): string {
  return sentence
    .replace(/ (It was left as it is; restore|Restore) the newest backup\.$/, "")
    .replace(/^The register's /, "The copy's ");
}

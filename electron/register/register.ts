import { RequestRefused } from "../refusals/request-refused.ts";
import { AthleteIndex } from "./athlete-index.ts";
import type { Connection } from "./connection.ts";
import { headCode } from "./head-code.ts";
import type { BackupTrouble } from "./kept-backups.ts";
import { hasContentKeys } from "./keys/content-keys.ts";
import { type Contents, contentsOf, opensWith } from "./keys/contents.ts";
import { beginLayers, changeDataKey, type Progress } from "./keys/conversion.ts";
import { unwrapKey } from "./passphrase-key.ts";
import { readFact } from "./register-facts.ts";
import { RegisterReads } from "./register-reads.ts";
import type { ErasureCertificate, Verification } from "./register-views.ts";
import { type Circumstances, RegisterWrites } from "./register-writes.ts";
import { verifyRegister } from "./verify-register.ts";

/** What exists only while the contents can be read. */
interface Unlocked extends Contents {
  readonly index: AthleteIndex;
  readonly reads: RegisterReads;
  readonly writes: RegisterWrites;
}

/** What was left undone by an earlier opening and is gone on with at this one. */
interface Finishing {
  /** Everything; also asks for the erasure, by `finishEarlierErasure`. */
  brokenOff(register: Register): void;
  /** @returns undefined where no erasure is unfinished */
  erasure(register: Register): ErasureCertificate | undefined;
}

/** An open register: locked or unlocked, for reading alone or for writing too. `openRegister` makes one. */
export class Register {
  readonly file: string;
  /** Why this register is open for reading alone, in one sentence; undefined where it can be written to. */
  readonly readOnlyBecause: string | undefined;
  readonly circumstances: Circumstances;
  /** Fields are brought to a new protection by who opened it, step by step, and not while it is opened or unlocked. */
  readonly convertsLater: boolean;
  /** Kept backups that could not be brought under the register's protection, or not be rid of what was erased. */
  backupTroubles: readonly BackupTrouble[] = [];
  readonly #releaseLock: () => void;
  readonly #finishing: Finishing;
  #connection: Connection;
  #dataKey: Uint8Array | undefined;
  #unlocked: Unlocked | undefined;
  #earlierErasure: ErasureCertificate | undefined;

  constructor(
    file: string,
    connection: Connection,
    circumstances: Circumstances,
    readOnlyBecause: string | undefined,
    releaseLock: () => void,
    finishing: Finishing,
    convertsLater = false,
  ) {
    this.convertsLater = convertsLater;
    this.file = file;
    this.#connection = connection;
    this.circumstances = circumstances;
    this.readOnlyBecause = readOnlyBecause;
    this.#releaseLock = releaseLock;
    this.#finishing = finishing;
    if (!this.encrypted) this.#openContents();
  }

  /** A passphrase protects it. */
  get encrypted(): boolean {
    return readFact(this.#connection, "protection") !== undefined;
  }

  /** Its contents cannot be read until the passphrase is given. */
  get locked(): boolean {
    return this.#unlocked === undefined;
  }

  /** @throws RequestRefused when the passphrase is another one */
  unlock(passphrase: Uint8Array): void {
    const wrapped = readFact(this.#connection, "protection");
    if (wrapped === undefined || this.#unlocked !== undefined) return;
    const dataKey = unwrapKey(wrapped, passphrase);
    if (dataKey === undefined) throw new RequestRefused("This is not the passphrase of the register.");
    if (!opensWith(this.#connection, dataKey)) {
      throw new RequestRefused(
        "This passphrase does not open what lies in the register: its protection was put there from another time or another register. Restore the newest backup.",
      );
    }
    this.#dataKey = this.readOnlyBecause === undefined ? this.#freshDataKey(dataKey, passphrase) : dataKey;
    this.#openContents();
    this.#finishing.brokenOff(this);
  }

  /** The data key, after another one took its place where one is due. */
  #freshDataKey(dataKey: Uint8Array, passphrase: Uint8Array): Uint8Array {
    const now = this.circumstances.now();
    const contents = contentsOf(this.#connection, dataKey);
    try {
      if (!hasContentKeys(this.#connection)) return beginLayers(contents, dataKey, passphrase, now);
      if (readFact(this.#connection, "dataKeyDue") === undefined) return dataKey;
      return changeDataKey(contents, dataKey, passphrase, now, () => undefined);
    } finally {
      contents.forget();
    }
  }

  /** Forgets the key and everything that was read with it; without a passphrase there is nothing to lock. */
  lock(): void {
    if (this.encrypted) this.#forget();
  }

  /** @throws RequestRefused while it is locked */
  get reads(): RegisterReads {
    return this.contents.reads;
  }

  /** @throws RequestRefused while it is locked or open for reading alone */
  get writes(): RegisterWrites {
    this.requireWritable();
    return this.contents.writes;
  }

  /** What of the register could not be read while it was opened, in one sentence; undefined where all of it could. */
  get damage(): string | undefined {
    const index = this.#unlocked?.index;
    const rows = index?.damagedRows ?? 0;
    if (rows === 0) {
      return index?.hadDamagedLines
        ? "The list of athletes was damaged in the file and was made anew from the records; verifying names whether anything else is damaged."
        : undefined;
    }
    const what = rows === 1 ? "One row of the register is" : `${rows} rows of the register are`;
    return `${what} damaged and not shown; verifying names what it is, and a backup can be restored.`;
  }

  /** Goes on with an erasure that was broken off before this opening. */
  finishEarlierErasure(): void {
    this.#earlierErasure = this.#finishing.erasure(this) ?? this.#earlierErasure;
  }

  /** What became, since it was opened, of an erasure that was broken off before; undefined where none was. */
  get earlierErasure(): ErasureCertificate | undefined {
    return this.#earlierErasure;
  }

  /** That an erasure is not finished yet, in one sentence; undefined where none is open. */
  get unfinishedErasure(): string | undefined {
    try {
      if (readFact(this.#connection, "unfinishedErasure") === undefined) return undefined;
    } catch (error) {
      if (error instanceof RequestRefused) return `Whether an erasure is unfinished cannot be read. ${error.message}`;
      throw error;
    }
    const remains = this.#earlierErasure?.remains ?? [];
    return [
      "An erasure is not finished: a backup, the log or pages that were set free may still hold what was erased.",
      ...remains,
      "Opening the register again goes on with it.",
    ].join(" ");
  }

  /** Checks everything that is stored; works on a locked register too, as far as that goes. */
  verify(): Verification {
    const { store, journal, lines } = this.#unlocked ?? contentsOf(this.#connection, undefined);
    return verifyRegister(store, journal, lines, !this.locked);
  }

  /** A short code of the journal as it ends now, to be printed and checked later; needs no key. */
  get headCode(): string | undefined {
    return headCode(this.#connection);
  }

  /** How far its fields are on their way to another protection; undefined where they are not on their way. */
  get conversion(): Progress | undefined {
    const conversion = readFact(this.#connection, "conversion");
    return conversion && { done: conversion.done, total: conversion.total };
  }

  close(): void {
    this.#forget();
    try {
      this.#connection.close();
    } finally {
      this.#releaseLock();
    }
  }

  /** For the parts of the register that care for it as a whole: backups, erasing, protection. */
  get connection(): Connection {
    return this.#connection;
  }

  get contents(): Unlocked {
    if (this.#unlocked === undefined) {
      throw new RequestRefused("The register is locked: give its passphrase to read it.");
    }
    return this.#unlocked;
  }

  get dataKey(): Uint8Array | undefined {
    return this.#dataKey;
  }

  requireWritable(): void {
    if (this.readOnlyBecause !== undefined) throw new RequestRefused(`${this.readOnlyBecause} Nothing was changed.`);
  }

  /** Goes on under another key, or none, after every field was written again. */
  continueUnder(dataKey: Uint8Array | undefined): void {
    this.#unlocked?.forget();
    if (dataKey !== this.#dataKey) this.#dataKey?.fill(0);
    this.#dataKey = dataKey;
    this.#openContents();
  }

  /** Goes on with the content that was put in the place of the old one. */
  continueOn(connection: Connection, dataKey: Uint8Array | undefined): void {
    this.#connection = connection;
    this.continueUnder(dataKey);
  }

  #forget(): void {
    this.#unlocked?.forget();
    this.#dataKey?.fill(0);
    this.#dataKey = undefined;
    this.#unlocked = undefined;
  }

  #openContents(): void {
    const contents = contentsOf(this.#connection, this.#dataKey);
    const { store, journal, lines } = contents;
    const index = new AthleteIndex(store, lines, this.readOnlyBecause === undefined);
    const reads = new RegisterReads(store, journal, index);
    const writes = new RegisterWrites(store, journal, index, this.circumstances);
    this.#unlocked = { ...contents, index, reads, writes };
  }
}

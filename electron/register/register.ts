import { RequestRefused } from "../request-refused.ts";
import { AthleteIndex } from "./athlete-index.ts";
import { AthleteLines } from "./athlete-lines.ts";
import type { Connection } from "./connection.ts";
import { finishErasure, whereFree } from "./erase-for-good.ts";
import { encryptedFields, type FieldProtection, plainFields } from "./field-protection.ts";
import { Journal } from "./journal.ts";
import { unwrapKey } from "./passphrase-key.ts";
import { RecordStore } from "./record-store.ts";
import { readFact, registerId } from "./register-facts.ts";
import { RegisterReads } from "./register-reads.ts";
import type { Verification } from "./register-views.ts";
import { type Circumstances, RegisterWrites } from "./register-writes.ts";
import { verifyRegister } from "./verify-register.ts";

/** What exists only while the contents can be read. */
interface Unlocked {
  readonly store: RecordStore;
  readonly journal: Journal;
  readonly lines: AthleteLines;
  readonly index: AthleteIndex;
  readonly reads: RegisterReads;
  readonly writes: RegisterWrites;
}

/** An open register: locked or unlocked, for reading alone or for writing too. `openRegister` makes one. */
export class Register {
  readonly file: string;
  /** Why this register is open for reading alone, in one sentence; undefined where it can be written to. */
  readonly readOnlyBecause: string | undefined;
  readonly circumstances: Circumstances;
  readonly #releaseLock: () => void;
  #connection: Connection;
  #dataKey: Uint8Array | undefined;
  #unlocked: Unlocked | undefined;

  constructor(
    file: string,
    connection: Connection,
    circumstances: Circumstances,
    readOnlyBecause: string | undefined,
    releaseLock: () => void,
  ) {
    this.file = file;
    this.#connection = connection;
    this.circumstances = circumstances;
    this.readOnlyBecause = readOnlyBecause;
    this.#releaseLock = releaseLock;
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
    this.#dataKey = dataKey;
    this.#openContents();
    if (this.readOnlyBecause === undefined) whereFree(() => finishErasure(this));
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

  /** Checks everything that is stored; works on a locked register too, as far as that goes. */
  verify(): Verification {
    const id = registerId(this.#connection);
    const store = this.#unlocked?.store ?? new RecordStore(this.#connection, id, plainFields);
    const journal = this.#unlocked?.journal ?? new Journal(this.#connection, id, plainFields);
    const lines = this.#unlocked?.lines ?? new AthleteLines(this.#connection, id, plainFields);
    return verifyRegister(store, journal, lines, !this.locked);
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
    this.#dataKey = dataKey;
    this.#openContents();
  }

  /** Goes on with the content that was put in the place of the old one. */
  continueOn(connection: Connection, dataKey: Uint8Array | undefined): void {
    this.#connection = connection;
    this.continueUnder(dataKey);
  }

  #forget(): void {
    this.#unlocked?.store.protection.forget();
    this.#dataKey?.fill(0);
    this.#dataKey = undefined;
    this.#unlocked = undefined;
  }

  #openContents(): void {
    const protection: FieldProtection = this.#dataKey === undefined ? plainFields : encryptedFields(this.#dataKey);
    const id = registerId(this.#connection);
    const store = new RecordStore(this.#connection, id, protection);
    const journal = new Journal(this.#connection, id, protection);
    const lines = new AthleteLines(this.#connection, id, protection);
    const index = new AthleteIndex(store, lines, this.readOnlyBecause === undefined);
    const reads = new RegisterReads(store, journal, index);
    const writes = new RegisterWrites(store, journal, index, this.circumstances);
    this.#unlocked = { store, journal, lines, index, reads, writes };
  }
}

import { AthleteLines } from "../athlete-lines.ts";
import type { Connection } from "../connection.ts";
import { Journal } from "../journal.ts";
import { RecordStore } from "../record-store.ts";
import { readFact, registerId } from "../register-facts.ts";
import { ContentKeys, hasContentKeys } from "./content-keys.ts";
import { decrypt } from "./encryption.ts";
import {
  directFields,
  type FieldProtection,
  layeredFields,
  plainFields,
  unlayeringFields,
} from "./field-protection.ts";
import { readJournalKey } from "./journal-key.ts";

/** What of a register can be read and written with its key. */
export interface Contents {
  readonly id: string;
  readonly protection: FieldProtection;
  readonly store: RecordStore;
  readonly journal: Journal;
  readonly lines: AthleteLines;
  /** Overwrites its keys: after this nothing of it can be read or written. */
  forget(): void;
}

/**
 * The contents of a register or of a copy of one, in whatever form its fields lie, also in the midst of a conversion.
 * @param dataKey undefined where no passphrase protects it, and for what can be looked at without one
 */
export function contentsOf(connection: Connection, dataKey: Uint8Array | undefined): Contents {
  const id = registerId(connection);
  const headKey = dataKey && readJournalKey(connection, id, dataKey);
  return contentsUnder(connection, id, protectionOf(connection, id, dataKey), headKey);
}

export function contentsUnder(
  connection: Connection,
  id: string,
  protection: FieldProtection,
  headKey: Uint8Array | undefined,
): Contents {
  return {
    id,
    protection,
    store: new RecordStore(connection, id, protection),
    journal: new Journal(connection, id, protection, headKey),
    lines: new AthleteLines(connection, id, protection),
    forget: () => {
      protection.forget();
      headKey?.fill(0);
    },
  };
}

function protectionOf(connection: Connection, id: string, dataKey: Uint8Array | undefined): FieldProtection {
  const conversion = readFact(connection, "conversion");
  if (conversion?.to === "plain")
    return unlayeringFields(new ContentKeys(connection, id, clearKey(conversion.dataKey)));
  if (conversion?.to === "passphrase") {
    return layeredFields(new ContentKeys(connection, id, clearKey(conversion.dataKey)), plainFields);
  }
  if (dataKey === undefined) return plainFields;
  if (!hasContentKeys(connection)) return directFields(dataKey);
  const earlier = conversion && decrypt(dataKey, Buffer.from(conversion.earlierKey, "base64"), earlierKeyPlace);
  return layeredFields(new ContentKeys(connection, id, dataKey), earlier && directFields(earlier));
}

/** Where the data key of before the layers is wrapped. */
export const earlierKeyPlace = "earlier data key";

export function clearKey(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, "base64"));
}

/** A data key that opens what lies in a register or a copy: the right one, and not only one that its passphrase gives. */
export function opensWith(connection: Connection, dataKey: Uint8Array): boolean {
  const id = registerId(connection);
  if (!hasContentKeys(connection)) {
    return new Journal(connection, id, directFields(dataKey)).readTitle(1) !== undefined;
  }
  const keys = new ContentKeys(connection, id, dataKey);
  try {
    return keys.opensAny();
  } finally {
    keys.forget();
  }
}

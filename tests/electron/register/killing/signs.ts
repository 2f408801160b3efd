import { Connection } from "../../../../electron/register/connection.ts";
import { keptBackups } from "../../../../electron/register/register-folder.ts";
import { secrets } from "../register-world.ts";
import { storedRecordings, withCopyOf } from "./look-at-files.ts";
import { toErase } from "./make-beginnings.ts";
import { type Beginning, type Operation, placesIn } from "./operations.ts";

/** By what one sees what a register holds, and whether it leaks. */
export interface Signs {
  readonly codes: readonly string[];
  /** The athletes of what is restored; undefined where nothing is. */
  readonly restoredCodes: readonly string[] | undefined;
  /** Words, of 6 bytes or more, that a register under a passphrase shows nowhere. */
  readonly words: readonly string[];
  /** Pieces of the recordings as a register in the clear keeps them. */
  readonly recordings: readonly Uint8Array[];
  /** What else tells of the person who is erased: recordings, and the identifier of the content key. */
  readonly ofErased: readonly Uint8Array[];
  readonly keptBackups: number;
}

const words = [
  secrets.name,
  secrets.otherName,
  secrets.code,
  secrets.note,
  secrets.folder,
  toErase.name,
  toErase.code,
  "ZR-0815",
  "Ylva Brekke",
  "anterior cruciate",
  "further ",
  "month ",
  "tester",
];

const ownCodes = ["QX-4711", "ZR-0815"];
const restoredCodes = [toErase.code, ...ownCodes];

/** The signs of an operation's register; what it holds is read from its beginning. */
export function signsOf({ begins, work }: Operation, folders: ReadonlyMap<Beginning, string>): Signs {
  const { register } = placesIn(folders.get(begins)!);
  const isOld = begins.startsWith("schema");
  const restored = work === "restore kept" ? [] : work.startsWith("restore") ? restoredCodes : undefined;
  const plain = placesIn(folders.get("plain")!).register;
  return {
    codes: begins === "schema 3 under a passphrase" ? ["EL-1", "EL-2"] : isOld ? ["OLD-1"] : ownCodes,
    restoredCodes: restored,
    words,
    recordings: isOld ? [] : storedRecordings(plain, "recordingBytes"),
    ofErased: isOld ? [] : [...storedRecordings(plain, erasedRecordings), ...keysOfErased(register)],
    keptBackups: keptBackups(register).length,
  };
}

const erasedRecordings = `(SELECT * FROM recordingBytes WHERE recording IN (SELECT recordings.id FROM recordings
  JOIN sessions ON sessions.id = session JOIN athletes ON athletes.id = athlete WHERE athletes.binned = 1))`;

function keysOfErased(register: string): readonly Uint8Array[] {
  return withCopyOf(register, (copy) => {
    const connection = new Connection(copy);
    try {
      const sql = "SELECT keyId FROM contentKeys JOIN athletes ON athletes.id = person WHERE binned = 1";
      // As a row names it, and as fields begin with it.
      return connection
        .all(sql)
        .flatMap(({ keyId }) => [Buffer.from(String(keyId)), Buffer.from(String(keyId), "hex")]);
    } finally {
      connection.close();
    }
  });
}

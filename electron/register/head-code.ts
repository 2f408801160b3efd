import { createHash } from "node:crypto";
import { bytesOf, type Connection, textOf } from "./connection.ts";
import { readFact, registerId } from "./register-facts.ts";

/** Letters and digits that are not taken for one another on paper: no I, L, O, U. */
const alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/** Sixty bits: enough that nobody finds another journal with the same code, short enough to be typed. */
const letters = 12;
const lettersInGroup = 4;

/** The code of an entry of the journal: its number, and letters that follow from all that came before it. */
export function entryCode(register: string, sequence: number, hash: Uint8Array): string {
  const sum = createHash("sha256")
    .update(JSON.stringify(["journal code", register, sequence]))
    .update(hash)
    .digest();
  const text = Array.from({ length: letters }, (_, at) => alphabet[(sum[at] ?? 0) & 31]).join("");
  const groups = Array.from({ length: letters / lettersInGroup }, (_, at) =>
    text.slice(at * lettersInGroup, (at + 1) * lettersInGroup),
  );
  return [sequence, ...groups].join("-");
}

/** The code of the journal as it ends now. */
export function headCode(connection: Connection): string | undefined {
  const head = readFact(connection, "journalHead");
  return head && entryCode(registerId(connection), head.sequence, Buffer.from(head.hash, "hex"));
}

/** What a printed code says of the journal there is. */
export interface CodeCheck {
  readonly code: string;
  /** The journal still holds the entry that the code was made from, with everything before it. */
  readonly fits: boolean;
  /** One plain sentence. */
  readonly sentence: string;
}

/** Looks for the entry of a printed code. Small letters, blanks and look-alikes are taken as what was meant. */
export function checkCode(connection: Connection, typed: string): CodeCheck {
  const [, number = "", rest = ""] = /^\s*(\d{1,15})[\s-]+(.*)$/.exec(typed) ?? [];
  const codeLetters = rest.toUpperCase().replace(/[\s-]/g, "").replaceAll("O", "0").replace(/[IL]/g, "1");
  const code = typed.trim();
  if (number === "" || codeLetters.length !== letters) {
    return {
      code,
      fits: false,
      sentence: `${code} is no code of a journal: a number and ${letters} letters and digits.`,
    };
  }
  const sequence = Number(number);
  const row = connection.one("SELECT at, hash FROM journal WHERE sequence = ?", sequence);
  if (row === undefined) {
    return {
      code,
      fits: false,
      sentence: `The journal has no entry ${sequence}: entries were taken away since the code was printed, an earlier copy was restored, or the code is of another register.`,
    };
  }
  const found = entryCode(registerId(connection), sequence, bytesOf(row, "hash"))
    .replaceAll("-", "")
    .slice(String(sequence).length);
  if (found !== codeLetters) {
    return {
      code,
      fits: false,
      sentence: `Entry ${sequence} of the journal is another one than the code was printed from: the journal was written anew, or the code is of another register.`,
    };
  }
  const at = textOf(row, "at");
  return { code, fits: true, sentence: `The code fits entry ${sequence} of the journal, of ${at}.` };
}

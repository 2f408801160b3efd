import { storedRowLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { sameBytes, sha256Of } from "./checksum.ts";
import { bytesOf, type Connection, type Row, textOf } from "./connection.ts";
import type { FieldProtection } from "./keys/field-protection.ts";
import { readFact, removeFact, writeFact } from "./register-facts.ts";
import type { AthleteLine } from "./register-views.ts";

/**
 * The list of athletes as it lies in the file, one row for each athlete, so that opening a large register reads these
 * rows alone. They say nothing that the records do not say, and are made anew from the records where they do not fit.
 */
export class AthleteLines {
  readonly #connection: Connection;
  readonly #registerId: string;
  readonly #protection: FieldProtection;

  constructor(connection: Connection, registerId: string, protection: FieldProtection) {
    this.#connection = connection;
    this.#registerId = registerId;
    this.#protection = protection;
  }

  /** There are lines in the file, and they were written with the journal's last entry. */
  get inStep(): boolean {
    const head = readFact(this.#connection, "journalHead");
    return head !== undefined && readFact(this.#connection, "athleteLines")?.journalHash === stepOf(head.hash);
  }

  /** Every line; undefined where one is not what was written. */
  readAll(): readonly AthleteLine[] | undefined {
    const lines: AthleteLine[] = [];
    for (const row of this.#connection.each("SELECT * FROM athleteLines")) {
      // The tag of an encrypted row says all that its checksum would.
      if (!this.#protection.proves(bytesOf(row, "content")) && !this.fitsChecksum(row)) return undefined;
      const line = this.readLine(row);
      if (line === undefined) return undefined;
      lines.push(line);
    }
    return lines;
  }

  /** What one row says; undefined where that cannot be read. */
  readLine(row: Row): AthleteLine | undefined {
    const plain = this.#protection.read(bytesOf(row, "content"), this.#place(textOf(row, "athlete")));
    if (plain === undefined) return undefined;
    try {
      // What fits its checksum or tag is what `write` wrote.
      return readJson(plain, storedRowLimits) as AthleteLine;
    } catch {
      return undefined;
    }
  }

  /** The row's checksum alone; needs no key. */
  fitsChecksum(row: Row): boolean {
    return sameBytes(sha256Of(this.#place(textOf(row, "athlete")), bytesOf(row, "content")), bytesOf(row, "checksum"));
  }

  /** Writes all lines anew, in one transaction. */
  replaceAll(lines: readonly AthleteLine[]): void {
    this.#connection.transaction(() => {
      this.#connection.execute("DELETE FROM athleteLines");
      for (const line of lines) this.#write(line);
      this.#noteStep();
    });
  }

  /** Writes the lines of some athletes, absent where they have none any more, within the transaction of a change. */
  replaceSome(lines: ReadonlyMap<string, AthleteLine | undefined>): void {
    // Whatever made the lines void has taken the fact away; then they are made anew at the next opening.
    if (readFact(this.#connection, "athleteLines") === undefined) return;
    for (const [athlete, line] of lines) {
      if (line === undefined) this.#connection.run("DELETE FROM athleteLines WHERE athlete = ?", athlete);
      else this.#write(line);
    }
    this.#noteStep();
  }

  #write(line: AthleteLine): void {
    const place = this.#place(line.id);
    const content = this.#protection.write(Buffer.from(JSON.stringify(line)), place, line.id);
    const checksum = sha256Of(place, content);
    this.#connection.run("INSERT OR REPLACE INTO athleteLines VALUES (?, ?, ?)", line.id, content, checksum);
  }

  #noteStep(): void {
    const head = readFact(this.#connection, "journalHead");
    if (head !== undefined) writeFact(this.#connection, "athleteLines", { journalHash: stepOf(head.hash) });
  }

  #place(athlete: string): string {
    return JSON.stringify([this.#registerId, "athleteLines", athlete, "content"]);
  }
}

/** Raised when a line is made otherwise from the same records: lines of an earlier program are then made anew. */
const lineForm = 2;

/** Lines fit the records where they were written with the journal's last entry, in this form. */
function stepOf(journalHash: string): string {
  return Buffer.from(sha256Of("athleteLines", Buffer.from(`${lineForm} ${journalHash}`))).toString("hex");
}

/** Takes all lines out of a register or backup, of an earlier schema too, within the caller's transaction. */
export function removeAthleteLines(connection: Connection): void {
  if (!hasAthleteLines(connection)) return;
  connection.execute("DELETE FROM athleteLines");
  removeFact(connection, "athleteLines");
}

export function hasAthleteLines(connection: Connection): boolean {
  return connection.one("SELECT name FROM sqlite_schema WHERE name = 'athleteLines'") !== undefined;
}

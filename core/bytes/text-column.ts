import { isoDate, parseClockText } from "./clock-text.ts";
import type { ClockColumn, TextColumn } from "./table.ts";

/** No setting: conversions of units. */
const secondsOfDay = 86_400;
const secondsOfHour = 3600;

/** Collects the cells of a column of text, each different one once. */
export class TextCells {
  private readonly indexOf = new Map<string, number>();
  private valueOfRow = new Uint32Array(0);

  set(row: number, cell: string): void {
    let index = this.indexOf.get(cell);
    if (index === undefined) {
      index = this.indexOf.size;
      this.indexOf.set(cell, index);
    }
    if (row >= this.valueOfRow.length) {
      const larger = new Uint32Array(Math.max(1024, 2 * row));
      larger.set(this.valueOfRow);
      this.valueOfRow = larger;
    }
    this.valueOfRow[row] = index;
  }

  cell(row: number): string {
    let index = 0;
    for (const value of this.indexOf.keys()) if (index++ === this.valueOfRow[row]) return value;
    return "";
  }

  column(rows: number): TextColumn {
    return { values: [...this.indexOf.keys()], valueOfRow: this.valueOfRow.subarray(0, rows) };
  }
}

/** Collects the stamps of a clock column, counted from the midnight of the first one's day. */
export class ClockCells {
  private firstDay: number | undefined;
  private hasDate: boolean | undefined;
  private firstOffset: number | undefined;
  private previous = 0;
  private daysPassed = 0;

  /** Seconds of the cell; NaN where it is no stamp, or one of another kind than the first. */
  read(cell: string): number {
    const stamp = parseClockText(cell);
    if (stamp === undefined) return Number.NaN;
    this.hasDate ??= stamp.day !== undefined;
    if (this.hasDate !== (stamp.day !== undefined)) return Number.NaN;
    if (stamp.day === undefined) {
      // From the last hour to the first: any other step back is a damaged stamp and must not move those behind it.
      if (this.previous > secondsOfDay - secondsOfHour && stamp.seconds < secondsOfHour) this.daysPassed++;
      this.previous = stamp.seconds;
      return stamp.seconds + this.daysPassed * secondsOfDay;
    }
    this.firstDay ??= stamp.day;
    this.firstOffset ??= stamp.offsetMinutes ?? 0;
    const eastward = (stamp.offsetMinutes ?? this.firstOffset) - this.firstOffset;
    return (stamp.day - this.firstDay) * secondsOfDay + stamp.seconds - 60 * eastward;
  }

  column(seconds: Float64Array): ClockColumn {
    return {
      hasDate: this.hasDate === true,
      date: this.firstDay === undefined ? "" : isoDate(this.firstDay),
      seconds,
    };
  }
}

import type { Statements } from "../answer.ts";

type DecimalMark = Statements["decimalMark"];
type Nothing = Readonly<Record<never, never>>;

/** A line and how many more are like it. */
interface LineAndMore {
  readonly line: number;
  readonly others: number;
}

interface OtherWidth extends LineAndMore {
  readonly columnCount: number;
}

/** A number that has two readings, in a column from 1; without a line where none is known. */
interface DoubtfulCell {
  readonly cell: string;
  readonly column: number;
  readonly line?: number;
}

/** What a line says of the number of rows, beside the rows the file holds. */
interface CountedRows {
  readonly line: number;
  readonly key: string;
  readonly value: string;
  readonly count: number;
  readonly rows: number;
}

/** The figures of what is found in a file of delimited text. */
export interface TableFindings {
  readonly empty: Nothing;
  readonly "not-data/no-text": Nothing;
  readonly "not-data/no-rows": Nothing;

  readonly "truncated/columns-missing": {
    readonly line: number;
    readonly fieldCount: number;
    readonly columnCount: number;
  };
  readonly "truncated/last-cell": { readonly line: number };
  readonly "truncated/inside-character": Nothing;
  readonly "truncated/rows-stated": CountedRows;
  readonly "rows-contradict": CountedRows;

  readonly "encoding-guessed/no-mark": { readonly encoding: string };
  readonly "encoding-guessed/not-as-marked": { readonly line: number };
  readonly "encoding-guessed/not-utf-8": { readonly line: number };

  readonly "decimal-mark-unclear/two-readings": DoubtfulCell;
  /** The comma seems to separate columns and decimals alike. */
  readonly "decimal-mark-unclear/comma-twice": {
    readonly line: number;
    readonly nameCount: number;
    readonly columnCount: number;
  };
  /** Columns from 1. */
  readonly "decimal-marks-differ/from-stated": { readonly stated: DecimalMark; readonly columns: readonly number[] };
  readonly "decimal-marks-differ/each-its-own": {
    readonly point: readonly number[];
    readonly comma: readonly number[];
  };

  readonly "columns-unclear/names-misfit": {
    readonly line: number;
    readonly nameCount: number;
    readonly columnCount: number;
  };
  readonly "columns-unclear/other-width": OtherWidth;
  readonly "columns-unclear/other-width-left-out": OtherWidth;
  /** The first odd lines with their widths, and how many more there are. */
  readonly "columns-unclear/widths-inside": {
    readonly columnCount: number;
    readonly odd: readonly { readonly line: number; readonly fieldCount: number }[];
    readonly others: number;
  };

  readonly "lines-skipped/above-first-row": { readonly line: number };
  readonly "lines-skipped/facts": { readonly lines: readonly number[] };
  readonly "lines-skipped/commented-rows": LineAndMore;
  readonly "lines-skipped/summary": LineAndMore & { readonly label: string };
  readonly "lines-skipped/no-sample": LineAndMore;
}

import { type DecimalMark, decimalMarkProvedBy } from "./number-text.ts";

/** A number that has two readings. */
export interface UnclearCell {
  readonly cell: string;
  /** Line of the file, from 1; 0 where it stands behind the lines that were counted. */
  readonly line: number;
}

/** What the cells of one column show about its decimal mark. */
export class MarkEvidence {
  /** Cells with one reading: "0.5", "1,234.5" under a point, "12,34" under a comma. */
  private readonly proofs: Record<DecimalMark, number> = { point: 0, comma: 0 };
  /** The first cell of two readings, by the mark in it: "1.234" under a point. */
  readonly unclear: Partial<Record<DecimalMark, UnclearCell>> = {};
  /** True once a whole number of at most three digits was met, which needs no thousands mark. */
  private hasShortWhole = false;
  /** True once a longer whole number stood without a thousands mark. */
  private hasLongWhole = false;

  add(cell: string, line: number): void {
    const proved = decimalMarkProvedBy(cell);
    if (proved === "unclear") {
      const mark = cell.includes(",") ? "comma" : "point";
      if ((this.unclear[mark]?.line ?? 0) === 0) this.unclear[mark] = { cell: cell.trim(), line };
    } else if (proved !== undefined) this.proofs[proved]++;
    else if (/^\s*[+-]?\d{1,3}\s*$/.test(cell)) this.hasShortWhole = true;
    else if (/^\s*[+-]?\d{4,}\s*$/.test(cell)) this.hasLongWhole = true;
  }

  /** The mark that most of the cells with one reading show; a damaged cell does not turn a column round. */
  get proved(): DecimalMark | undefined {
    const { point, comma } = this.proofs;
    return point === comma ? undefined : point > comma ? "point" : "comma";
  }

  get isUnclear(): boolean {
    return this.proved === undefined && (this.unclear.point ?? this.unclear.comma) !== undefined;
  }

  /** The only mark in the unclear cells; undefined where they hold both, or there are none. */
  get unclearMark(): DecimalMark | undefined {
    const { point, comma } = this.unclear;
    return point === undefined ? comma && "comma" : comma === undefined ? "point" : undefined;
  }

  /**
   * True where whole numbers up to 999 stand bare and no longer one does: "987" beside "1.234" is how thousands are
   * marked, while a column printed with three decimals has them everywhere.
   */
  get looksGrouped(): boolean {
    return this.hasShortWhole && !this.hasLongWhole;
  }
}

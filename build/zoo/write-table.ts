import type { Limb } from "../../core/ground/limb.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";
import { encodeText, readAs, type WrittenEncoding } from "./encode-text.ts";
import type { ZooColumn } from "./table-columns.ts";
import type { ExpectedReading, ExpectedTable, ZooFile } from "./zoo-file.ts";

const delimiterNames = { ",": "comma", ";": "semicolon", "\t": "tab", "|": "pipe", " ": "spaces", "": "none" } as const;
const thousandsNames = { ",": "comma", ".": "point", "'": "apostrophe", " ": "space", "\u00a0": "space" } as const;

/** How a table is written; the usual form where absent. */
export interface Writing {
  readonly delimiter?: keyof typeof delimiterNames;
  /** Blanks of padding, or a blank behind each delimiter. */
  readonly separator?: string;
  readonly decimalMark?: "." | ",";
  /** By column, where columns differ; `decimalMark` is then that of most columns. */
  readonly decimalMarks?: readonly ("." | ",")[];
  readonly thousands?: keyof typeof thousandsNames;
  readonly lineEnd?: "\n" | "\r\n" | "\r";
  readonly encoding?: WrittenEncoding;
  readonly quotes?: boolean;
  /** Lines above the column names. */
  readonly above?: readonly string[];
  /** False: no line of names. */
  readonly names?: boolean;
  /** In place of the line made of the columns' names. */
  readonly namesLine?: string;
  /** Lines between the names and the first row. */
  readonly beneathNames?: readonly string[];
  /** Lines behind the rows. */
  readonly below?: readonly string[];
  /** Lines that stand between two rows, by the row they follow. */
  readonly between?: ReadonlyMap<number, string>;
  readonly trailingDelimiter?: boolean;
  /** True: nothing stands behind the last row. */
  readonly isUnclosed?: boolean;
  /** Changes the finished text. */
  readonly damage?: (text: string) => string;
  /** Rows that a reader is expected to find, where not all of them. */
  readonly rowsFound?: number;
}

/** What is expected beside what follows from the columns. */
export interface Expecting {
  readonly outcome?: ExpectedReading["outcome"];
  readonly findings?: readonly string[];
  readonly answers?: LayoutAnswers;
  readonly answeredFindings?: readonly string[];
  readonly rateHz?: number;
  readonly rateFrom?: ExpectedReading["rateFrom"];
  readonly statesCount?: boolean;
  /** False: no table is expected. */
  readonly isTable?: boolean;
}

/** Writes a table and says how it is expected to be read. */
export function tableFile(
  name: string,
  columns: readonly ZooColumn[],
  writing: Writing = {},
  expecting: Expecting = {},
): ZooFile {
  const { encoding = "UTF-8", lineEnd = "\n", above = [], below = [], beneathNames = [], between } = writing;
  const count = columns[0]?.cells.length ?? 0;
  const join = (cells: readonly string[]): string => joinCells(cells, writing);
  const header = [...above];
  if (writing.names !== false) {
    if (columns.some((column) => column.nameAbove !== undefined)) {
      header.push(join(columns.map((column) => column.nameAbove ?? "")));
    }
    header.push(...(writing.namesLine ?? join(columns.map((column) => column.name))).split("\n"));
    if (columns.some((column) => column.unitBelow !== undefined)) {
      header.push(join(columns.map((column) => column.unitBelow ?? "")));
    }
  }
  header.push(...beneathNames);
  const lines = [...header];
  const lineOfRow: number[] = [];
  for (let row = 0; row < count; row++) {
    lines.push(join(columns.map((column, index) => writeNumber(column.cells[row]!, inColumn(writing, index)))));
    lineOfRow.push(lines.length);
    const behind = between?.get(row);
    if (behind !== undefined) lines.push(behind);
  }
  lines.push(...below);
  const text = lines.join(lineEnd) + (writing.isUnclosed === true ? "" : lineEnd);
  const rows = writing.rowsFound ?? count;
  const sampleRows = [0, 3, rows >> 1, rows - 1];
  const { outcome = "understood", findings = [], answers, answeredFindings, statesCount = false } = expecting;
  const { rateHz, rateFrom = "time column" } = expecting;
  const isRead = outcome === "understood" || answers !== undefined;
  const areSwapped = answers?.swapPlates === true;
  const table = expectedTable(columns, writing, rows, lineOfRow, sampleRows, areSwapped);
  return {
    name,
    cells: columns.map(({ cells }) => cells),
    bytes: encodeText(writing.damage?.(text) ?? text, encoding),
    expected: {
      outcome,
      findings,
      ...(answers === undefined ? {} : { answers, answeredFindings: answeredFindings ?? [] }),
      statesCount,
      ...(isRead ? { rateHz: rateHz ?? 500, rateFrom } : {}),
      ...(expecting.isTable === false ? {} : { table }),
      sampleRows,
      plates: isRead ? expectedPlates(columns, sampleRows, areSwapped) : [],
    },
  };
}

function expectedTable(
  columns: readonly ZooColumn[],
  { delimiter = ",", decimalMark = ".", thousands, encoding = "UTF-8", names }: Writing,
  rows: number,
  lineOfRow: readonly number[],
  sampleRows: readonly number[],
  areSwapped: boolean,
): ExpectedTable {
  return {
    encoding: readAs[encoding],
    delimiter: delimiterNames[delimiter],
    decimalMark: decimalMark === "." ? "point" : "comma",
    thousandsMark: thousands === undefined ? "none" : thousandsNames[thousands],
    rows,
    firstRowLine: lineOfRow[0] ?? 0,
    lastRowLine: lineOfRow[rows - 1] ?? 0,
    columns: columns.map(({ name, nameAbove, role, limb, unit, cells, value }) => ({
      name: names === false ? "" : [nameAbove ?? "", name].join(" ").trim(),
      role,
      ...(limb === undefined ? {} : { limb: areSwapped ? otherFoot(limb) : limb }),
      unit,
      values: sampleRows.map((row) => value?.(row) ?? plainValue(cells[row]!)),
    })),
  };
}

function plainValue(cell: string): number | null {
  const value = cell.trim() === "" ? Number.NaN : Number(cell);
  return Number.isNaN(value) ? null : value;
}

/** Plates in the order of their first columns; columns of one foot are added, a total beside one foot gives the other. */
function expectedPlates(
  columns: readonly ZooColumn[],
  sampleRows: readonly number[],
  areSwapped: boolean,
): ExpectedReading["plates"] {
  const forces = columns.filter((column) => column.role === "force");
  const newtons = (found: readonly ZooColumn[], row: number): number =>
    found.map(({ cells, newtons: to = Number }) => to(Number(cells[row]))).reduce((sum, value) => sum + value);
  const limbs = [...new Set(forces.map(({ limb }) => limb!))];
  const sides = limbs.filter((limb) => limb !== "both");
  const isDerived = sides.length === 1 && limbs.includes("both");
  const shown = isDerived || sides.length === 0 ? limbs : sides;
  const of = (limb: string): readonly ZooColumn[] => forces.filter((column) => column.limb === limb);
  return shown.map((limb) => {
    const [side = "left"] = sides;
    if (isDerived && limb === "both") {
      return {
        limb: otherFoot(side),
        newtons: sampleRows.map((row) => newtons(of("both"), row) - newtons(of(side), row)),
      };
    }
    return { limb: areSwapped ? otherFoot(limb) : limb, newtons: sampleRows.map((row) => newtons(of(limb), row)) };
  });
}

function otherFoot(limb: Limb): Limb {
  return limb === "both" ? limb : limb === "left" ? "right" : "left";
}

function joinCells(cells: readonly string[], writing: Writing): string {
  const { delimiter = ",", quotes, trailingDelimiter } = writing;
  const separator = writing.separator ?? delimiter;
  const all = quotes === true ? cells.map((cell) => `"${cell}"`) : cells;
  return all.join(separator) + (trailingDelimiter === true ? delimiter : "");
}

function inColumn(writing: Writing, column: number): Writing {
  const own = writing.decimalMarks?.[column];
  return own === undefined ? writing : { ...writing, decimalMark: own };
}

/** A plain number in the file's own marks. */
function writeNumber(cell: string, { decimalMark = ".", thousands }: Writing): string {
  const found = /^([+-]?)(\d+)(?:\.(\d+))?$/.exec(cell);
  if (found === null) return cell;
  const [, sign = "", whole = "", decimals] = found;
  const grouped = thousands === undefined ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, thousands);
  return `${sign}${grouped}${decimals === undefined ? "" : `${decimalMark}${decimals}`}`;
}

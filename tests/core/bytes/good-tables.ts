/** A file that reads without a finding, in one of the dialects that tables come in. */
export interface GoodTable {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** True when the file states how many rows it has, so that even a cut between two rows shows. */
  readonly statesCount: boolean;
}

const rowCount = 120;

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** UTF-16 with its byte order mark. */
function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  for (let index = 0; index < text.length; index++) view.setUint16(2 + 2 * index, text.charCodeAt(index), littleEndian);
  return bytes;
}

/** Rows of time, left and right force; every force differs, so that a mix-up shows. */
function rows(separator: string, write: (cell: string, column: number) => string = (cell) => cell): string {
  return Array.from({ length: rowCount }, (_, row) => {
    const cells = [(row / 1000).toFixed(3), (300 + row * 0.25).toFixed(2), (980 + row * 0.5).toFixed(2)];
    return `${cells.map(write).join(separator)}\n`;
  }).join("");
}

const withComma = (cell: string): string => cell.replace(".", ",");
const grouped = (cell: string): string => withComma(cell).replace(/^(\d)(\d{3},)/, "$1.$2");

const table = (name: string, text: string | Uint8Array, statesCount = false): GoodTable => ({
  name,
  bytes: typeof text === "string" ? utf8(text) : text,
  statesCount,
});

const facts = `Club: Grynnholm HK\nmass;69,4\nSamples: ${rowCount}\n\n`;

export const goodTables: readonly GoodTable[] = [
  table("comma", `time (s),left (N),right (N)\n${rows(",")}`),
  table("comma and blank, CR LF", `time (s), left (N), right (N)\n${rows(", ")}`.replaceAll("\n", "\r\n")),
  table("semicolon, decimal comma, count", `${facts}Zeit;links;rechts\ns;N;N\n${rows(";", withComma)}`, true),
  table("thousands marks", `Zeit;links;rechts\n${rows(";", grouped)}`),
  table("tab, CR", `time\tleft\tright\n${rows("\t")}`.replaceAll("\n", "\r")),
  table("pipe", `time|left|right\n${rows("|")}`),
  table("blanks", `time (s)  left (N)  right (N)\n${rows("   ")}`),
  table("trailing delimiter", `time,left,right,\n${rows(",").replaceAll("\n", ",\n")}`),
  table("quoted", `"time (s)","left\n(N)","right (N)"\n${rows(",", (cell) => `"${cell}"`)}`),
  table("UTF-16 little endian", utf16(`time;left;right\n${rows(";")}`, true)),
  table("UTF-16 big endian, count", utf16(`rows=${rowCount}\ntime;left;right\n${rows(";")}`, false), true),
  table("UTF-8 with a mark", `\ufefftime;Kraft links;Kraft rechts\n${rows(";")}`),
  table("clock", `clock;left;right\n${rows(";", (cell, column) => (column === 0 ? `10:15:0${cell}` : cell))}`),
  table("words", `time;sync;left\n${rows(";", (cell, column) => (column === 1 ? String(cell.endsWith("0")) : cell))}`),
  table("two rows of names", `;Plate 1;Plate 2\nTime;Fz;Fz\n(s);(N);(N)\n${rows(";")}`),
  table("one column", rows(",").replaceAll(/^[\d.]+,|,[\d.]+$/gm, "")),
  table("whole numbers", `index left right\n${rows(" ", (cell) => cell.replace(".", ""))}`),
  table("comments and footer", `% simulated\ntime,left,right\n${rows(",")}\nEnd of the recording\n`),
];

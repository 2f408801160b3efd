import { c3dLines } from "../../core/recording/c3d/c3d-lines.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { TableReading } from "../../core/recording/request.ts";
import type { FileLines } from "../boundary/recording-replies.ts";

const lineLength = 400;

const decoderLabels: Readonly<Record<TableReading["encoding"], string>> = {
  "UTF-8": "utf-8",
  "Windows-1252": "windows-1252",
  "UTF-16LE": "utf-16le",
  "UTF-16BE": "utf-16be",
};

/** Gives stretches of files as text; the line ends of the file looked at last are kept, so that scrolling is quick. */
export class FileTexts {
  #file: RecordingFile | undefined;
  #starts: readonly number[] = [];

  /**
   * Lines as they stand, where what is no text shows as replacement characters; of a C3D file what it holds.
   * @param first from 1; beyond the end there are no lines
   */
  linesOf(file: RecordingFile, reading: FileReading | undefined, first: number, count: number): FileLines {
    if (reading?.kind === "c3d") {
      const all = c3dLines(reading);
      return { first, lines: all.slice(first - 1, first - 1 + count).map(shownLine), total: all.length };
    }
    const encoding = reading?.encoding ?? "UTF-8";
    if (this.#file !== file) {
      this.#starts = lineStarts(file.bytes, encoding);
      this.#file = file;
    }
    const starts = this.#starts;
    const last = Math.min(first - 1 + count, starts.length);
    const decoder = new TextDecoder(decoderLabels[encoding]);
    const lines: string[] = [];
    for (let index = first - 1; index < last; index += 1) {
      const bytes = file.bytes.subarray(starts[index], starts[index + 1] ?? file.bytes.length);
      lines.push(shownLine(decoder.decode(bytes).replace(/[\r\n]+$/, "")));
    }
    return { first, lines, total: starts.length };
  }
}

/** Where each line begins; a line break at the very end begins none. */
function lineStarts(bytes: Uint8Array, encoding: TableReading["encoding"]): readonly number[] {
  const width = encoding === "UTF-16LE" || encoding === "UTF-16BE" ? 2 : 1;
  const low = encoding === "UTF-16BE" ? 1 : 0;
  const unitAt = (at: number): number =>
    width === 1 ? (bytes[at] ?? 0) : (bytes[at + low] ?? 0) + 256 * (bytes[at + 1 - low] ?? 0);
  const starts: number[] = bytes.length === 0 ? [] : [0];
  for (let at = 0; at < bytes.length; at += width) {
    const unit = unitAt(at);
    const next = at + width;
    // CR LF is one break, and so is the CR CR LF that a text-mode rewrite leaves behind.
    const goesOn = unitAt(next) === 10 || (unitAt(next) === 13 && unitAt(next + width) === 10);
    const isBreak = unit === 10 || (unit === 13 && !goesOn);
    if (isBreak && next < bytes.length) starts.push(next);
  }
  return starts;
}

function shownLine(line: string): string {
  const short = line.length > lineLength ? `${line.slice(0, lineLength)} …` : line;
  return short.replaceAll(/(?!\t)\p{Cc}/gu, "\ufffd");
}

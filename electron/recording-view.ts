import type { SessionAnalysis } from "../core/analysis.ts";
import type { Finding } from "../core/finding.ts";
import { c3dLines } from "../core/recording/c3d/c3d-lines.ts";
import type { RecordingFile } from "../core/recording/file.ts";
import type { FileReading } from "../core/recording/file-reading.ts";
import type { TableReading } from "../core/recording/request.ts";
import type { TrialResult } from "../core/result.ts";
import { fileOutcome } from "./file-outcome.ts";
import type { RecordingView } from "./host-api.ts";

const headLines = 12;
/** Platforms and hints come first, then the channels. */
const c3dHeadLines = 40;
const headBytes = 8192;
const headLineLength = 240;

/**
 * How one file of an analysed session stands.
 * @param sameAs recordings with the same bytes in other sessions
 */
export function viewRecording(
  file: RecordingFile,
  analysis: SessionAnalysis,
  sameAs: readonly string[],
): RecordingView {
  const read = analysis.recordings.get(file.path);
  const trials = trialsOf(analysis, file.path);
  const refusals = trials.flatMap((trial) => trial.findings).filter((each) => each.severity === "refusal");
  const findings = distinct([...(read?.findings ?? []), ...refusals]);
  return {
    file: file.path,
    byteLength: file.bytes.byteLength,
    outcome: fileOutcome(findings, trials),
    ...(read?.reading && { reading: read.reading }),
    findings,
    head: headOf(file.bytes, read?.reading),
    trials: trials.filter((trial) => trial.span !== undefined).length,
    sameAs,
  };
}

/** The trials of one file; `file` is its path within the session. */
export function trialsOf(analysis: SessionAnalysis, file: string): readonly TrialResult[] {
  return analysis.result.trials.filter((trial) => trial.file === file);
}

function distinct(findings: readonly Finding[]): readonly Finding[] {
  const key = ({ code, where, message }: Finding) => `${code}\n${where}\n${message}`;
  return [...new Map(findings.map((each) => [key(each), each])).values()];
}

const decoderLabels: Readonly<Record<TableReading["encoding"], string>> = {
  "UTF-8": "utf-8",
  "Windows-1252": "windows-1252",
  "UTF-16LE": "utf-16le",
  "UTF-16BE": "utf-16be",
};

/** The first lines as text, where what is no text shows as replacement characters; of a C3D file what it holds. */
function headOf(bytes: Uint8Array, reading: FileReading | undefined): string {
  if (reading?.kind === "c3d") return c3dLines(reading).slice(0, c3dHeadLines).map(shortened).join("\n");
  const label = decoderLabels[reading?.encoding ?? "UTF-8"];
  const text = new TextDecoder(label).decode(bytes.subarray(0, headBytes));
  return text
    .split(/\r\n|\n|\r/)
    .slice(0, headLines)
    .map(shortened)
    .join("\n");
}

function shortened(line: string): string {
  return printable(line.length > headLineLength ? `${line.slice(0, headLineLength)} …` : line);
}

function printable(line: string): string {
  return line.replaceAll(/(?!\t)\p{Cc}/gu, "\ufffd");
}

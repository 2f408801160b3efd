import type { Finding } from "../../core/ground/finding.ts";
import type { RecordingFile } from "../../core/recording/file.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import { english } from "../../core/words/english.ts";
import { writtenFinding } from "../../core/words/written-finding.ts";
import { fileOutcome } from "../boundary/file-outcome.ts";
import type { RecordingView } from "../boundary/workspace-view.ts";

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
    trials: trials.filter((trial) => trial.span !== undefined).length,
    sameAs,
  };
}

/** The trials of one file; `file` is its path within the session. */
export function trialsOf({ result: { trials } }: SessionAnalysis, file: string): readonly TrialResult[] {
  const known = trialsByFile.get(trials) ?? groupedByFile(trials);
  trialsByFile.set(trials, known);
  return known.get(file) ?? [];
}

function groupedByFile(trials: readonly TrialResult[]): ReadonlyMap<string, readonly TrialResult[]> {
  const grouped = new Map<string, TrialResult[]>();
  for (const trial of trials) {
    const group = grouped.get(trial.file);
    if (group === undefined) grouped.set(trial.file, [trial]);
    else group.push(trial);
  }
  return grouped;
}

/** Sorted once for each result: a session of thousands of files is asked about every one of them. */
const trialsByFile = new WeakMap<readonly TrialResult[], ReadonlyMap<string, readonly TrialResult[]>>();

function distinct(findings: readonly Finding[]): readonly Finding[] {
  const key = (each: Finding) => {
    const { code, where, message } = writtenFinding(each, english);
    return `${code}\n${where}\n${message}`;
  };
  return [...new Map(findings.map((each) => [key(each), each])).values()];
}

import type { Finding } from "../../core/ground/finding.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { english } from "../../core/words/english.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { fileOutcome } from "../boundary/file-outcome.ts";
import { joinPath } from "../files/recording-names.ts";
import { findingWithOptions } from "./finding-line.ts";

/** "12 trials in 2 sessions: 10 analysed, 1 partial, 1 refused." */
export function summaryLine(results: readonly SessionResult[]): string {
  const trials = results.flatMap((result) => result.trials);
  const count = (status: string) => trials.filter((trial) => trial.status === status).length;
  const parts = (["analysed", "partial", "refused"] as const)
    .map((status) => ({ status, number: count(status) }))
    .filter(({ number }) => number > 0)
    .map(({ status, number }) => `${number} ${status}`);
  return `${counted(trials.length, "trial")} in ${counted(results.length, "session")}: ${parts.join(", ")}.`;
}

/**
 * How the files stand, after a line for each that asks or was refused: "asks a.csv: …", "3 files: 1 understood, 1 asks,
 * 1 refused."
 */
export function outcomeLines(results: readonly SessionResult[]): readonly string[] {
  const files = results.flatMap(filesOf);
  const lines = files
    .filter(({ outcome }) => outcome !== "understood")
    .map(({ path, outcome, reason }) => `${outcome} ${path}: ${reason}`);
  const parts = (["understood", "asks", "refused"] as const)
    .map((outcome) => ({ outcome, number: files.filter((file) => file.outcome === outcome).length }))
    .filter(({ number }) => number > 0)
    .map(({ outcome, number }) => `${number} ${outcome === "asks" && number > 1 ? "ask" : outcome}`);
  return [...lines, `${counted(files.length, "file")}: ${parts.join(", ")}.`];
}

function filesOf({ folder, trials }: SessionResult) {
  const byFile = new Map<string, TrialResult[]>();
  for (const trial of trials) byFile.set(trial.file, [...(byFile.get(trial.file) ?? []), trial]);
  return [...byFile].map(([file, ofFile]) => {
    const findings = ofFile.flatMap((trial) => trial.findings);
    const refusal = findings.find(({ severity }) => severity === "refusal");
    return {
      path: joinPath(folder, file),
      outcome: fileOutcome(findings, ofFile),
      reason: refusal === undefined ? "holds no trial that can be used." : findingWithOptions(refusal),
    };
  });
}

/** Every finding as one line with its place: "warning weighing-short, a.csv trial 1: …". */
export function findingLines(results: readonly SessionResult[]): readonly string[] {
  return results.flatMap((result) => [
    ...result.findings.map((each) => findingLine(result.folder === "" ? "session" : result.folder, each)),
    ...result.trials.flatMap((trial) =>
      trial.findings.map((each) => findingLine(`${joinPath(result.folder, trial.file)} trial ${trial.trial}`, each)),
    ),
  ]);
}

function findingLine(place: string, finding: Finding): string {
  const { severity, code } = finding;
  const { where } = findingInWords(finding, english);
  const at = where === "" ? place : `${place}, ${where}`;
  return `${severity} ${code}, ${at}: ${findingWithOptions(finding)}`;
}

function counted(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}

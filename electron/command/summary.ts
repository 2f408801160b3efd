import type { Finding } from "../../core/finding.ts";
import type { SessionResult } from "../../core/result.ts";
import { joinPath } from "../recording-names.ts";

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

/** Every finding as one line with its place: "warning weighing-short, a.csv trial 1: …". */
export function findingLines(results: readonly SessionResult[]): readonly string[] {
  return results.flatMap((result) => [
    ...result.findings.map((each) => findingLine(result.folder === "" ? "session" : result.folder, each)),
    ...result.trials.flatMap((trial) =>
      trial.findings.map((each) => findingLine(`${joinPath(result.folder, trial.file)} trial ${trial.trial}`, each)),
    ),
  ]);
}

function findingLine(place: string, { severity, code, where, message, action }: Finding): string {
  const at = where === "" ? place : `${place}, ${where}`;
  return `${severity} ${code}, ${at}: ${[message, action].filter((part) => part !== "").join(" ")}`;
}

function counted(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}

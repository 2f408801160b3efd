import { withoutOptions } from "../../core/ground/plain-words.ts";
import { leftAsideWords } from "../../core/recording/left-aside-words.ts";
import { tellFinding } from "../../core/words/finding-in-words.ts";
import type { MadeFile } from "../../electron/boundary/made-file.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
import type { BatchFile, TakenIn } from "./take-in.ts";

const prose = words.screens.recordingsIntake;
const counts = words.screens.counts;

/** How the files of a batch are told apart. */
export const outcomeKinds = ["understood", "asks", "refused", "not read"] as const;

export type OutcomeKind = (typeof outcomeKinds)[number];

/** One file of a batch as it stands now. */
export interface OutcomeLine {
  readonly path: string;
  readonly name: string;
  readonly folder?: string;
  readonly kind: OutcomeKind;
  readonly message: string;
}

/**
 * The recordings of a batch as they stand now: what was answered or excluded since is followed in the session that is
 * shown. Files that describe a session are listed only where they could not be understood in full.
 */
export function outcomeLines({ files }: TakenIn, workspace: Workspace): readonly OutcomeLine[] {
  return files.flatMap((file) => {
    const { picked, folder, outcome, message } = file;
    const name = picked.path.slice(picked.path.lastIndexOf("/") + 1);
    const place = { path: picked.path, name, ...(folder === undefined ? {} : { folder }) };
    if (outcome === "session") {
      return message === "Describes the session." ? [] : [{ ...place, kind: "understood" as const, message }];
    }
    const view = folder === workspace.folder ? workspace.recordings.find((each) => each.file === name) : undefined;
    if (outcome === "left aside") return [];
    if (view === undefined || outcome === "not read") return [{ ...place, kind: outcome, message }];
    const refusal = view.findings.find((each) => each.severity === "refusal");
    const sentenceBefore = view.outcome === outcome ? message : refusal === undefined ? counts.trials(view.trials) : "";
    const now = refusal === undefined || view.outcome === outcome ? sentenceBefore : tellFinding(refusal, words);
    return [{ ...place, kind: view.outcome, message: now }];
  });
}

/** What of a batch was no recording, in a sentence that names it; "" where there was none. */
export function leftAsideOf(taken: TakenIn): string {
  return leftAsideWords(
    taken.files.flatMap(({ picked, kind }) => (kind === undefined ? [] : [{ path: picked.path, kind }])),
  );
}

/** "24 recordings: 20 understood, 3 ask for something, 1 refused." */
export function outcomeSummary(lines: readonly OutcomeLine[]): string {
  const count = (kind: OutcomeKind) => lines.filter((line) => line.kind === kind).length;
  const words: Readonly<Record<OutcomeKind, string>> = {
    understood: prose.understood,
    asks: count("asks") === 1 ? prose.asksForSomething : prose.askForSomething,
    refused: prose.refused,
    "not read": prose.notRead,
  };
  const parts = outcomeKinds.flatMap((kind) => (count(kind) === 0 ? [] : [`${count(kind)} ${words[kind]}`]));
  if (parts.length === 0) return prose.noRecordings;
  if (parts.length === 1 && count("understood") > 0) return prose.allUnderstood(lines.length);
  return `${counts.recordings(lines.length)}: ${parts.join(", ")}.`;
}

/** The files that did not come through: to be tried again, also after something was answered or remembered. */
export function failedFiles({ files }: TakenIn, lines: readonly OutcomeLine[]): readonly BatchFile["picked"][] {
  const failed = new Set(lines.filter((line) => line.kind !== "understood").map((line) => line.path));
  return files.flatMap(({ picked }) => (failed.has(picked.path) ? [picked] : []));
}

/** The outcome of every file as a table to keep: file, session, outcome, reason. */
export function outcomeReport(lines: readonly OutcomeLine[], { files }: Pick<TakenIn, "files">): MadeFile {
  const aside = files.filter(({ outcome }) => outcome === "left aside");
  const rows = [
    ...lines.map(({ path, folder = "", kind, message }) => [path, folder, kind, withoutOptions(message)]),
    ...aside.map(({ picked, outcome, message }) => [picked.path, "", outcome, message]),
  ];
  const text = [["file", "session", "outcome", "reason"], ...rows].map((row) => row.map(cell).join(",")).join("\r\n");
  return { name: "recordings-taken-in.csv", mediaType: "text/csv", bytes: new TextEncoder().encode(`${text}\r\n`) };
}

/** A cell that stays text wherever it is opened: one that looks like a formula is led by an apostrophe. */
function cell(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

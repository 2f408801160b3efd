import type { SessionResult } from "../../core/result/session-result.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { resultCsv } from "../../core/sheet/result-csv.ts";
import { resultDocument, resultJson } from "../../core/sheet/result-document.ts";
import { withVisibleTexts } from "../terminal/visible-text.ts";
import { analyzeSessions, exitCodeOf } from "./analyze-sessions.ts";
import { findSessions } from "./find-sessions.ts";
import { checkOutputFile, writeWhole } from "./output-file.ts";
import { parseArguments } from "./parse-arguments.ts";
import { readJobs } from "./read-jobs.ts";
import { readLayouts } from "./read-layouts.ts";
import { refuseLive } from "./refuse-live.ts";
import { resultTable } from "./result-table.ts";
import { choice, readStatedOptions, statingOptionNames } from "./stated-options.ts";
import type { Streams } from "./streams.ts";
import { findingLines, outcomeLines, summaryLine } from "./summary.ts";

const formats = ["table", "json", "csv"] as const;

/** `counterpoise analyze`: everything typed is checked before anything is read. */
export async function analyzeCommand(typed: readonly string[], streams: Streams): Promise<number> {
  const { options, positionals } = parseArguments(typed, [...statingOptionNames, "layout", "jobs", "format", "out"]);
  const stated = readStatedOptions(options);
  const layouts = readLayouts(options.layout);
  const jobs = readJobs(options.jobs);
  const format = choice("--format", options.format ?? "table", formats);
  const { say } = streams;
  const sessions = findSessions(positionals, say);
  const out = options.out === undefined ? undefined : checkOutputFile(options.out, sessions);

  const results = await analyzeSessions(sessions, { stated, layouts }, defaultSettings, jobs);
  refuseLive(results, stated);
  const text = resultText(results, format);
  if (out === undefined) streams.out(text);
  else writeWhole(out, new TextEncoder().encode(text));

  // The table carries its findings; the other formats are for programs, so a person reads them here.
  if (format !== "table") for (const line of findingLines(results)) say(line);
  for (const line of outcomeLines(results)) say(line);
  say(summaryLine(results));
  return exitCodeOf(results);
}

function resultText(results: readonly SessionResult[], format: (typeof formats)[number]): string {
  if (format === "table") return resultTable(withVisibleTexts(results));
  const document = resultDocument(results, defaultSettings);
  return format === "json" ? resultJson(document) : resultCsv(document);
}

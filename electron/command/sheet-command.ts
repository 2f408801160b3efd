import { statSync } from "node:fs";
import { extname } from "node:path";
import { defaultSettings } from "../../core/settings/settings.ts";
import { buildSheet } from "../../core/sheet/build-sheet.ts";
import { sheetHtml } from "../../core/sheet/sheet-html.ts";
import { makeSheetPdf } from "../pdf/make-pdf.ts";
import { analyzeSessions, exitCodeOf } from "./analyze-sessions.ts";
import { findSessions } from "./find-sessions.ts";
import { checkOutputFile, writeWhole } from "./output-file.ts";
import { parseArguments } from "./parse-arguments.ts";
import { readLayouts } from "./read-layouts.ts";
import { refuseLive } from "./refuse-live.ts";
import { readStatedOptions, statingOptionNames } from "./stated-options.ts";
import type { Streams } from "./streams.ts";
import { findingLines, summaryLine } from "./summary.ts";
import { UsageError } from "./usage-error.ts";

/** `counterpoise sheet`: the testing sheet of one session as a file. */
export async function sheetCommand(typed: readonly string[], streams: Streams): Promise<number> {
  const { options, positionals } = parseArguments(typed, [...statingOptionNames, "layout", "out"]);
  const stated = readStatedOptions(options);
  const layouts = readLayouts(options.layout);
  const [folder, ...more] = positionals;
  if (folder === undefined || more.length > 0) throw new UsageError("Name exactly one folder; --help shows examples.");
  if (!(statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false)) {
    throw new UsageError(`${folder} is no folder; a sheet is made of a session's folder.`);
  }
  if (options.out === undefined) throw new UsageError("--out is needed: a file that ends in .html or .pdf.");
  const ending = extname(options.out).toLowerCase();
  if (ending !== ".html" && ending !== ".pdf") {
    throw new UsageError(`--out must end in .html or .pdf, and ${options.out} does not.`);
  }
  const { say } = streams;
  const sessions = findSessions([folder], say);
  if (sessions.length > 1) {
    const found = sessions.map((session) => (session.folder === "" ? "." : session.folder)).join(", ");
    throw new UsageError(`${folder} holds ${sessions.length} sessions (${found}); name the folder of one.`);
  }
  const out = checkOutputFile(options.out, sessions);

  const results = await analyzeSessions(sessions, { stated, layouts }, defaultSettings);
  refuseLive(results, stated);
  const [result] = results;
  if (result === undefined) throw new Error("A session was found and not analysed.");
  const sheet = buildSheet(result, defaultSettings);
  writeWhole(out, ending === ".html" ? new TextEncoder().encode(sheetHtml(sheet)) : await makeSheetPdf(sheet));

  for (const line of findingLines(results)) say(line);
  say(summaryLine(results));
  return exitCodeOf(results);
}

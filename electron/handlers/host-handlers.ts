import { engineVersion } from "../../core/ground/version.ts";
import { buildSheet } from "../../core/sheet/build-sheet.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import { resultCsv } from "../../core/sheet/result-csv.ts";
import { resultDocument, resultJson } from "../../core/sheet/result-document.ts";
import { sheetHtml } from "../../core/sheet/sheet-html.ts";
import { writeSessionFile } from "../../core/stated/session-file.ts";
import type { HostApi } from "../boundary/host-api.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import type { MadeFile } from "../boundary/made-file.ts";
import type { WatchView } from "../boundary/watch-view.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { fileStem, sessionFileName } from "../files/recording-names.ts";
import { makeSheetPdf } from "../pdf/make-pdf.ts";
import type { RegisterHome } from "../register-host/register-home.ts";
import { reportMistake } from "../terminal/report-mistake.ts";
import { SessionWatch } from "../watch/session-watch.ts";
import type { WorkspaceState } from "../workspace/workspace.ts";
import { noRegisterHandlers, registerHandlers } from "./register-handlers.ts";
import { attended, doneWhole } from "./whole-requests.ts";

/** Implements the boundary once, for window and browser alike. */
export function makeHandlers(
  workspace: WorkspaceState,
  host: "window" | "browser",
  home?: RegisterHome,
  watch: SessionWatch = openWatch(workspace, home),
): HostHandlers {
  const thenRead = (deed: () => void): Workspace => {
    deed();
    return workspace.read();
  };
  const thenLook = (deed: () => void): WatchView => {
    deed();
    return watch.read();
  };
  const handlers = {
    "application.describe": () => ({ version: engineVersion, host, passphraseStore: "absent" as const }),
    "workspace.read": () => workspace.read(),
    "workspace.openDemo": async () => {
      if (home === undefined) workspace.openDemo();
      else await home.openDemo();
      return workspace.read();
    },
    "workspace.clear": () => thenRead(() => workspace.clear()),
    "workspace.show": ({ folder }) => thenRead(() => workspace.show(folder)),
    "workspace.undo": (request) => thenRead(() => workspace.undo(request)),
    "workspace.redo": (request) => thenRead(() => workspace.redo(request)),
    "recordings.add": ({ path, bytes, batch }) => workspace.add(path, bytes, batch),
    "recordings.endBatch": ({ batch }) => workspace.endBatch(batch),
    "recordings.takeOut": ({ folder, files }) => thenRead(() => workspace.takeOut(folder, files)),
    "recordings.lines": ({ folder, file, first, count }) => workspace.lines(folder, file, first, count),
    "recordings.outline": ({ folder, file }) => {
      const outline = workspace.outline(folder, file);
      return outline === undefined ? {} : { outline };
    },
    "recordings.assign": ({ folder, rows, ...started }) => thenRead(() => workspace.assign(folder, rows, started)),
    "layouts.remember": ({ folder, file, name }) => thenRead(() => workspace.rememberLayout(folder, file, name)),
    "layouts.rename": ({ name, to }) => thenRead(() => workspace.layoutShelf.rename(name, to)),
    "layouts.remove": ({ name }) => thenRead(() => workspace.layoutShelf.remove(name)),
    "layouts.import": ({ bytes }) => thenRead(() => void workspace.layoutShelf.take(bytes)),
    "layouts.export": ({ name }) => ({
      name: `${fileStem(name)}.layout.json`,
      mediaType: "application/json",
      bytes: new TextEncoder().encode(workspace.layoutShelf.textOf(name)),
    }),
    // The window answers this itself; pages in a browser have no dialog that tells a path.
    "watch.choose": () => ({}),
    "watch.start": ({ folder }) => thenLook(() => watch.start(folder)),
    "watch.stop": () => thenLook(() => watch.stop()),
    "watch.read": () => watch.read(),
    "watch.expect": ({ next }) => thenLook(() => watch.expect(next)),
    "recordings.answer": ({ folder, files, answers, ...started }) =>
      thenRead(() => workspace.answer(folder, files, answers, started)),
    "session.change": ({ folder, change, ...started }) =>
      thenRead(() => workspace.changeSession(folder, change, started)),
    "cautions.add": ({ folder, addition }) => thenRead(() => workspace.addCautions(folder, addition)),
    "trials.change": ({ folder, file, trial, change, ...started }) =>
      thenRead(() => workspace.changeTrial(folder, file, trial, change, started)),
    "trials.keepOrExclude": ({ folder, trials, decision }) =>
      thenRead(() => workspace.keepOrExclude(folder, trials, decision)),
    "trials.statePlates": ({ folder, files, feet, ...started }) =>
      thenRead(() => workspace.statePlates(folder, files, feet, started)),
    "trials.trace": ({ folder, file, trial }) => workspace.trace(folder, file, trial),
    "sides.curves": (request) => {
      const overlay = workspace.overlay(request);
      return overlay === undefined ? {} : { overlay };
    },
    "sheet.read": ({ folder }) => sheetOf(workspace, folder),
    "files.make": ({ folder, format }) => makeFile(workspace, folder, format),
    ...(home === undefined ? noRegisterHandlers() : registerHandlers(home)),
  } satisfies HostHandlers;
  const whole = doneWhole(handlers, workspace);
  return home === undefined ? whole : attended(whole, home);
}

/** The watch of a folder: it goes on while the register is locked, and each recording is a sign that people are there. */
export function openWatch(workspace: WorkspaceState, home?: RegisterHome): SessionWatch {
  const report = reportMistake;
  if (home === undefined) return new SessionWatch(workspace, { report });
  const watch = new SessionWatch(workspace, {
    report,
    sessionUnderWay: () => home.sessionUnderWay(),
    isLocked: () => home.isLocked,
    showsCounts: () => home.preferences.countsWhileLocked,
    cameIn: () => home.attend(),
  });
  home.watch = watch;
  return watch;
}

function sheetOf(workspace: WorkspaceState, folder: string): SheetDocument {
  const journalCode = workspace.journalCode(folder);
  const origin = journalCode === undefined ? {} : { journalCode };
  return buildSheet(workspace.analysis(folder).result, workspace.settings, origin);
}

async function makeFile(
  workspace: WorkspaceState,
  folder: string,
  format: HostApi["files.make"]["request"]["format"],
): Promise<MadeFile> {
  const { result } = workspace.analysis(folder);
  const { athlete, date } = result.description;
  const name = athlete?.code ?? (folder === "" ? "recordings" : folder);
  const stem = [fileStem(name), date].filter((part) => part !== undefined).join("-");
  const text = (name: string, mediaType: string, content: string): MadeFile => ({
    name,
    mediaType,
    bytes: new TextEncoder().encode(content),
  });
  switch (format) {
    case "session": {
      const made = text(sessionFileName, "application/json", writeSessionFile(result.description));
      workspace.takenAlong(folder);
      return made;
    }
    case "json":
      return text(`${stem}-results.json`, "application/json", resultJson(resultDocument([result], workspace.settings)));
    case "csv":
      return text(`${stem}-results.csv`, "text/csv", resultCsv(resultDocument([result], workspace.settings)));
    case "html":
      return text(`${stem}-sheet.html`, "text/html", sheetHtml(sheetOf(workspace, folder)));
    case "pdf":
      return {
        name: `${stem}-sheet.pdf`,
        mediaType: "application/pdf",
        bytes: await makeSheetPdf(sheetOf(workspace, folder)),
      };
  }
}

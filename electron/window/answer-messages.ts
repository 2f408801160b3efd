import type { IpcMain, IpcMainInvokeEvent } from "electron";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import { channelOf, requestNames } from "../boundary/request-names.ts";
import { handleRequest } from "../handlers/handle-request.ts";
import { isOwnPage } from "./own-pages.ts";

/** One channel a request, none besides; each message must come from the top frame of an own page. */
export function answerMessages(ipcMain: IpcMain, handlers: HostHandlers, report: (error: unknown) => void): void {
  for (const name of requestNames) {
    ipcMain.handle(channelOf(name), (event, request: unknown) => {
      if (!comesFromOwnPage(event)) throw new Error("The message does not come from a page of the program.");
      return handleRequest(handlers, name, request, report);
    });
  }
}

function comesFromOwnPage({ senderFrame }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOwnPage(senderFrame.url);
}

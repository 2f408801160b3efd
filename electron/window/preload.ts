import { contextBridge, ipcRenderer } from "electron";
import type { Outcome } from "../handle-request.ts";
import type { Host, HostApi, HostRequestName } from "../host-api.ts";
import { channelOf, isRequestName } from "../request-names.ts";

/** All the page gets: the typed requests of the boundary. */
const host = {
  async call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) {
    if (!isRequestName(name)) throw new Error("There is no such request.");
    const outcome: Outcome = await ipcRenderer.invoke(channelOf(name), request);
    if (outcome.kind !== "done") throw new Error(outcome.message);
    return outcome.reply as HostApi[Name]["reply"];
  },
} satisfies Host;

contextBridge.exposeInMainWorld("counterpoise", host);

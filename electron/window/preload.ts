import { contextBridge, ipcRenderer } from "electron";
import type { Host, HostApi, HostRequestName } from "../boundary/host-api.ts";
import { channelOf, isRequestName } from "../boundary/request-names.ts";
import type { Outcome } from "../handlers/handle-request.ts";

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

import type { Host, HostApi, HostRequestName } from "../../electron/boundary/host-api.ts";
import type { HostHandlers } from "../../electron/boundary/host-handlers.ts";
import { handleRequest } from "../../electron/handlers/handle-request.ts";

/** A host that calls the handlers through the same checks as window and browser, without a channel between. */
export function directHost(handlers: HostHandlers): Host {
  return {
    async call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) {
      const mistakes: unknown[] = [];
      const outcome = await handleRequest(handlers, name, request, (error) => mistakes.push(error));
      if (mistakes.length > 0) throw mistakes[0];
      if (outcome.kind !== "done") throw new Error(outcome.message);
      return outcome.reply as HostApi[Name]["reply"];
    },
  };
}

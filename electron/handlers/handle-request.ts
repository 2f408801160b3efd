import type { HostApi, HostRequestName } from "../boundary/host-api.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import { hostRequests } from "../boundary/host-requests.ts";
import { isRequestName } from "../boundary/request-names.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { brokenSentence } from "./whole-requests.ts";

/** What came of a request: a reply, or a sentence for the person. */
export type Outcome =
  | { readonly kind: "done"; readonly reply: HostApi[HostRequestName]["reply"] }
  | { readonly kind: "unknown" | "invalid" | "refused" | "broken"; readonly message: string };

/**
 * Checks the name and the payload of a request from outside and has it handled. Never throws: an exception is our own
 * mistake and is handed to `report`, while the person gets a sentence.
 */
export async function handleRequest(
  handlers: HostHandlers,
  name: string,
  request: unknown,
  report: (error: unknown) => void,
): Promise<Outcome> {
  if (!isRequestName(name)) return { kind: "unknown", message: "There is no such request." };
  try {
    return await checkedRequest(handlers, name, request);
  } catch (error) {
    if (error instanceof RequestRefused) return { kind: "refused", message: error.message };
    report(error);
    return { kind: "broken", message: brokenSentence(name) };
  }
}

async function checkedRequest<Name extends HostRequestName>(
  handlers: HostHandlers,
  name: Name,
  request: unknown,
): Promise<Outcome> {
  const checked = hostRequests[name].schema.safeParse(request);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    const place = issue === undefined || issue.path.length === 0 ? "The request" : issue.path.join(".");
    return { kind: "invalid", message: `${place}: ${issue?.message ?? "is not understood"}.` };
  }
  const handler: (payload: never) => unknown = handlers[name];
  const reply = await handler(checked.data as never);
  return { kind: "done", reply: reply as HostApi[Name]["reply"] };
}

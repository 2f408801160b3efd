import { beyondJsonLimits, beyondWords } from "../../core/bytes/json-bounds.ts";
import { requestLimits } from "../bounded-json/limits.ts";
import { BeyondLimits } from "../bounded-json/read-json.ts";
import { decodeMessage, textOfMessage } from "./host-codec.ts";

/**
 * The message in the body of a request, its text looked at before anything is made of it.
 * @throws BeyondLimits
 * @throws SyntaxError when it is no message
 */
export function readRequestBody(body: Uint8Array): unknown {
  const beyond = beyondJsonLimits(textOfMessage(body), requestLimits);
  if (beyond !== undefined) throw new BeyondLimits(beyondWords(beyond, requestLimits));
  return decodeMessage(body);
}

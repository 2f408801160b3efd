import { recordingRequests } from "./recording-requests.ts";
import { registerRequests } from "./register-requests.ts";
import { sessionRequests } from "./session-requests.ts";

/**
 * The boundary between the screen and the host: one map of request → schema and reply. Windows reach it over Electron's
 * message channel, browsers over the loopback server; both end in the same handlers.
 */
export const hostRequests = { ...sessionRequests, ...recordingRequests, ...registerRequests };

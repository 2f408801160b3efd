import type { hostRequests } from "./host-requests.ts";
import type { RequestTypes } from "./request.ts";

/** What each request of the boundary asks with and is answered with. */
export type HostApi = RequestTypes<typeof hostRequests>;

export type HostRequestName = keyof HostApi;

/** What the renderer calls, however the host is reached. */
export interface Host {
  call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]): Promise<HostApi[Name]["reply"]>;
}

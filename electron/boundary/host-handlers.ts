import type { HostApi, HostRequestName } from "./host-api.ts";
import type { RegisterRequestName } from "./register-requests.ts";

/** One function a request; the payload has been checked before it is called. */
export type HostHandlers = {
  readonly [Name in HostRequestName]: (
    request: HostApi[Name]["request"],
  ) => HostApi[Name]["reply"] | Promise<HostApi[Name]["reply"]>;
};

/** The part of the host's handlers that serves the register. */
export type RegisterHandlers = Pick<HostHandlers, RegisterRequestName>;

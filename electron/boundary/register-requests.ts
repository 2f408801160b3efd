import { z } from "zod";
import type { Verification } from "../register/register-views.ts";
import { copyRequests } from "./copy-requests.ts";
import { recordRequests } from "./record-requests.ts";
import { nothing, request } from "./request.ts";
import { line, passphrase } from "./request-parts.ts";
import type { Workspace } from "./workspace-view.ts";

/** The requests of the register. */
export const registerRequests = {
  /** Opens the person's own register, made where there is none; the demo's copy is thrown away. */
  "register.openOwn": request(nothing).replies<Workspace>(),
  "register.lock": request(nothing).replies<Workspace>(),
  /** `remember`: keep the passphrase in the key store of the operating system, where there is one. */
  "register.unlock": request(
    z.strictObject({ passphrase, remember: z.boolean().exactOptional() }),
  ).replies<Workspace>(),
  "register.setPassphrase": request(z.strictObject({ passphrase })).replies<Workspace>(),
  /** What makes a passphrase too weak for something new; nothing where it is strong enough. */
  "passphrase.weigh": request(z.strictObject({ passphrase })).replies<{ readonly weakness?: string }>(),
  "register.removePassphrase": request(nothing).replies<Workspace>(),
  /** Takes the passphrase out of the key store of the operating system. */
  "register.forgetPassphrase": request(nothing).replies<Workspace>(),
  "register.lockAfter": request(z.strictObject({ minutes: z.int().min(0).max(720) })).replies<Workspace>(),
  /** Says who is at the machine from now on; "" for no name. Locking forgets it. */
  "register.actBy": request(z.strictObject({ name: line(100) })).replies<Workspace>(),
  /** Whether the locked screen shows how many recordings of a watched folder came in. */
  "register.countWhileLocked": request(z.strictObject({ counts: z.boolean() })).replies<Workspace>(),
  /** Says whether a person is there; answers whether the register is locked. */
  "register.attend": request(z.strictObject({ present: z.boolean() })).replies<{ readonly locked: boolean }>(),
  "register.verify": request(nothing).replies<Verification>(),
  ...recordRequests,
  ...copyRequests,
};

/** The name of a request that only a host with a register answers. */
export type RegisterRequestName = keyof typeof registerRequests;

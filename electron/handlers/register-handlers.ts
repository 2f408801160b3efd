import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import { registerRequests } from "../boundary/register-requests.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { removingPassphrase, settingPassphrase } from "../register/register-passphrase.ts";
import { requireStrength, weaknessOf } from "../register/strength/passphrase-strength.ts";
import type { RegisterHome } from "../register-host/register-home.ts";
import { archiveHandlers } from "./archive-handlers.ts";
import { backupHandlers } from "./backup-handlers.ts";
import { copyHandlers } from "./copy-handlers.ts";
import { limitHandlers } from "./limit-handlers.ts";
import { recordHandlers } from "./record-handlers.ts";
import { sessionHandlers } from "./session-handlers.ts";

/** Implements the register's requests. */
export function registerHandlers(home: RegisterHome): RegisterHandlers {
  const thenRead = (): Workspace => home.workspace.read();
  return {
    "register.openOwn": async () => {
      await home.openOwn();
      return thenRead();
    },
    "register.lock": () => {
      home.lock();
      return thenRead();
    },
    "register.unlock": ({ passphrase }) => {
      home.unlock(passphrase);
      return thenRead();
    },
    "register.setPassphrase": async ({ passphrase }) => {
      await requireStrength(passphrase, [home.register.circumstances.who]);
      await home.protect((register) => settingPassphrase(register, passphrase));
      return thenRead();
    },
    "passphrase.weigh": async ({ passphrase }) => {
      const weakness = await weaknessOf(passphrase, [home.register.circumstances.who]);
      return weakness === undefined ? {} : { weakness };
    },
    "register.removePassphrase": async () => {
      await home.protect(removingPassphrase);
      return thenRead();
    },
    // Where an operating system keeps passphrases, the window's own handler stands before this one.
    "register.forgetPassphrase": thenRead,
    "register.lockAfter": ({ minutes }) => {
      refuseLocked(home);
      home.prefer({ ...home.preferences, lockAfterMinutes: minutes });
      home.attend();
      return thenRead();
    },
    "register.actBy": ({ name }) => {
      home.actBy(name.trim());
      return thenRead();
    },
    "register.countWhileLocked": ({ counts }) => {
      refuseLocked(home);
      home.prefer({ ...home.preferences, countsWhileLocked: counts });
      return thenRead();
    },
    "register.attend": ({ present }) => {
      if (present) home.attend();
      return { locked: home.view().locked };
    },
    "register.verify": () => home.register.verify(),
    ...recordHandlers(home),
    ...sessionHandlers(home),
    ...limitHandlers(home),
    ...backupHandlers(home),
    ...copyHandlers(home),
    ...archiveHandlers(home),
  };
}

/** What says when it locks, and what a locked screen shows, is not changed from a locked screen. */
function refuseLocked(home: RegisterHome): void {
  if (home.view().locked) throw new RequestRefused("The register is locked: give its passphrase to change this.");
}

/** For a host that keeps no register: every request of it is refused. */
export function noRegisterHandlers(): RegisterHandlers {
  const refuse = (): never => {
    throw new RequestRefused("This program was started without a register.");
  };
  return Object.fromEntries(Object.keys(registerRequests).map((name) => [name, refuse])) as unknown as RegisterHandlers;
}

import { chmodSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import type { Workspace } from "../host-api.ts";
import type { HostHandlers } from "../host-handlers.ts";
import { passphraseBytes } from "../register/passphrase-bytes.ts";
import { RequestRefused } from "../request-refused.ts";

/** The key store of the operating system, as far as it is needed here. */
export interface KeyStore {
  /** False where there is none, or only one that protects nothing. */
  isAvailable(): boolean;
  /** The key stores of the operating systems take a text, so here, and only here, the passphrase becomes one. */
  protect(text: string): Uint8Array;
  /** @throws when the bytes were protected by another user or on another computer */
  reveal(bytes: Uint8Array): string;
}

/** The handlers, with the register's passphrase remembered where the person wants it. */
export interface RememberingHandlers {
  readonly handlers: HostHandlers;
  /** Unlocks the register with the remembered passphrase, where there is one and it fits. */
  unlockAtStart(): Promise<void>;
}

/**
 * Keeps the passphrase of the register on this computer, protected by the operating system's key store, from the moment
 * a person asks for it until they take it back.
 * @param file where the protected passphrase lies, readable by its owner alone
 */
export function rememberPassphrase(handlers: HostHandlers, store: KeyStore, file: string): RememberingHandlers {
  const holds = () => existsSync(file);
  const forget = () => rmSync(file, { force: true });
  const keep = (passphrase: Uint8Array) => {
    const partial = `${file}.part`;
    writeFileSync(partial, store.protect(Buffer.from(passphrase).toString("utf8")), { mode: 0o600 });
    chmodSync(partial, 0o600);
    renameSync(partial, file);
  };
  const unlockRemembered = async (): Promise<Workspace | undefined> => {
    if (!holds() || !store.isAvailable()) return undefined;
    try {
      return await handlers["register.unlock"]({ passphrase: passphraseBytes(store.reveal(readFileSync(file))) });
    } catch (error) {
      // It was changed by another program, or the key store is another one: only the person can help now.
      if (error instanceof RequestRefused) forget();
      return undefined;
    }
  };
  return {
    handlers: {
      ...handlers,
      "application.describe": async (request) => {
        const described = await handlers["application.describe"](request);
        const state = !store.isAvailable() ? "absent" : holds() ? "holds it" : "empty";
        return { ...described, passphraseStore: state };
      },
      "register.openOwn": async (request) => {
        const workspace = await handlers["register.openOwn"](request);
        return workspace.register?.locked === true ? ((await unlockRemembered()) ?? workspace) : workspace;
      },
      "register.unlock": async (request) => {
        const workspace = await handlers["register.unlock"](request);
        if (request.remember && workspace.register?.encrypted && store.isAvailable()) keep(request.passphrase);
        return workspace;
      },
      "register.setPassphrase": async (request) => {
        const workspace = await handlers["register.setPassphrase"](request);
        if (holds()) keep(request.passphrase);
        return workspace;
      },
      "register.removePassphrase": async (request) => {
        const workspace = await handlers["register.removePassphrase"](request);
        forget();
        return workspace;
      },
      "register.forgetPassphrase": (request) => {
        forget();
        return handlers["register.forgetPassphrase"](request);
      },
    },
    unlockAtStart: async () => {
      const { register } = await handlers["workspace.read"]({});
      if (register?.locked) await unlockRemembered();
    },
  };
}

import { chmodSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { passphraseBytes } from "../register/passphrase-bytes.ts";

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
  /** Keeps the passphrase where the request succeeds; the request itself takes the bytes along. */
  const keeping = async (passphrase: Uint8Array, isWanted: boolean, ask: () => Workspace | Promise<Workspace>) => {
    const copy = isWanted ? Uint8Array.from(passphrase) : undefined;
    try {
      const workspace = await ask();
      if (copy !== undefined && workspace.register?.encrypted) keep(copy);
      return workspace;
    } finally {
      copy?.fill(0);
    }
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
        const { remember, passphrase } = request;
        return keeping(passphrase, remember === true && store.isAvailable(), () =>
          handlers["register.unlock"](request),
        );
      },
      "register.setPassphrase": async (request) => {
        return keeping(request.passphrase, holds(), () => handlers["register.setPassphrase"](request));
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

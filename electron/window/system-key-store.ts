import type { SafeStorage } from "electron";
import type { KeyStore } from "./remembered-passphrase.ts";

/** The operating system's key store through Electron. On Linux, one without a password of its own protects nothing. */
export function systemKeyStore(safeStorage: SafeStorage, platform: NodeJS.Platform): KeyStore {
  const isReal = () => platform !== "linux" || safeStorage.getSelectedStorageBackend() !== "basic_text";
  return {
    isAvailable: () => safeStorage.isEncryptionAvailable() && isReal(),
    protect: (text) => safeStorage.encryptString(text),
    reveal: (bytes) => safeStorage.decryptString(Buffer.from(bytes)),
  };
}

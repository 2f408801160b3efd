import type { RestoredProtection } from "./register-views.ts";

/** What protects a backup, and what will protect the register once it is restored, in a sentence. */
export function restoredWords(encrypted: boolean, afterwards: RestoredProtection): string {
  const is = encrypted ? "A passphrase protects it" : "No passphrase protects it";
  if (afterwards === "the register's") return `${is}; restored, it will be under this register's passphrase.`;
  if (afterwards === "the backup's") {
    return `${is}; restored, the register and its kept backups will be under that passphrase.`;
  }
  return `${is}, nor will one protect what is restored.`;
}

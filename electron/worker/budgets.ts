import type { HostRequestName } from "../boundary/host-api.ts";

/** What the working thread may use before it is ended. */
export interface WorkBudgets {
  /** Objects of the language; bytes of recordings lie outside them and have a limit of their own. */
  readonly heapMegabytes: number;
  /** For one file, or for what a request does beside files. */
  readonly milliseconds: number;
}

/**
 * Measured: a session of 500 recordings holds 24 MB of objects, and a recording of 23 MB is read within 32 MB of them;
 * what is left is for large registers and archives, and what no file should need ends before a machine of 8 GB is
 * exhausted (common practice: half of the memory for one program). A recording of 48 MB took 2 s with everything that was
 * said about it; a slow and busy machine has sixty times that.
 */
export const workBudgets: WorkBudgets = { heapMegabytes: 2048, milliseconds: 120_000 };

/**
 * Requests that go over a whole register or archive, whatever its size: they have no limit of time. Each is done in the
 * register's own transactions, so that an end by other means leaves it whole.
 */
const withoutTimeLimit: readonly string[] = [
  "register.",
  "records.",
  "archive.",
  "backups.",
  "bin.",
  "workspace.openDemo",
];

export function hasTimeLimit(name: HostRequestName): boolean {
  return !withoutTimeLimit.some((each) => name.startsWith(each));
}

import type { HostRequestName } from "../host-api.ts";

/** What the working thread may use before it is ended. */
export interface WorkBudgets {
  /** Objects of the language; bytes of recordings lie outside them and have a limit of their own. */
  readonly heapMegabytes: number;
  /** For one file, or for what a request does beside files. */
  readonly milliseconds: number;
}

/**
 * tests/bench/worker-budgets.md has the figures: the largest recording that is taken in and the largest session that was
 * measured stay far below both.
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

import { basename } from "node:path";
import type { Register } from "../register.ts";
import { type Fact, readFact, writeFact } from "../register-facts.ts";
import { keptBackups } from "../register-folder.ts";
import type { CopyCheck } from "./check-schema.ts";

/** When a copy was checked and what was found. */
export interface NotedCheck {
  readonly verifiedAt: string;
  readonly found: CopyCheck;
}

/** The last checks of kept backups, by the names of their files. */
export function keptChecks(register: Register): ReadonlyMap<string, NotedCheck> {
  const { checks } = readFact(register.connection, "checkedBackups") ?? noChecks;
  return new Map(checks.map(({ name, ...check }) => [name, check]));
}

const noChecks: Fact<"checkedBackups"> = { checks: [] };

/** Keeps what a check of a kept backup found; needs no key. Checks of backups that are gone go. */
export function noteKeptCheck(register: Register, path: string, check: NotedCheck): void {
  register.requireWritable();
  const names = new Set(keptBackups(register.file).map((each) => basename(each)));
  const name = basename(path);
  const others = [...keptChecks(register)].filter(([each]) => each !== name && names.has(each));
  const checks = [...others, [name, check] as const].map(([each, noted]) => ({ name: each, ...noted }));
  register.connection.transaction(() =>
    writeFact(register.connection, "checkedBackups", { checks: checks.slice(-1000) }),
  );
}

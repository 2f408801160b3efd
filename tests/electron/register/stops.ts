import { cpSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { type Step, tellSteps } from "../../../electron/register/steps.ts";
import { temporaryFolder } from "./register-world.ts";

/** A register's folder as a stop of the program between two steps would have left it. */
export interface Stopped {
  readonly step: Step;
  /** The register's file in the copy of the folder. */
  readonly file: string;
}

/** Within each transaction and each file that takes its name; `killing.test.ts` falls there. */
const everywhere: ReadonlySet<Step> = new Set<Step>([
  "about to commit",
  "committed",
  "copy written",
  "file flushed",
  "file named",
  "oldest backup removed",
]);

/** Copies the register's whole folder, log and backups included, after each step of the work. */
export async function stoppedAfterEachStep(registerFile: string, work: () => unknown): Promise<readonly Stopped[]> {
  const stops: Stopped[] = [];
  tellSteps((step) => {
    if (everywhere.has(step)) return;
    const folder = join(temporaryFolder(), "stopped");
    cpSync(dirname(registerFile), folder, { recursive: true });
    stops.push({ step, file: join(folder, basename(registerFile)) });
  });
  try {
    await work();
  } finally {
    tellSteps(undefined);
  }
  return stops;
}

import { UsageError } from "./usage-error.ts";

/** Most threads that are started. */
const mostJobs = 64;

/**
 * `--jobs N`: how many threads share the work; undefined leaves it to the machine.
 * @throws UsageError when it is no such number
 */
export function readJobs(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const jobs = Number(typed);
  if (!/^\d+$/.test(typed) || jobs < 1 || jobs > mostJobs) {
    throw new UsageError(`--jobs must be a whole number from 1 to ${mostJobs}, not "${typed}".`);
  }
  return jobs;
}

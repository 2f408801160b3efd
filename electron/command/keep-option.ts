import type { KeptTrial, StatedOptions } from "../../core/stated/stated-options.ts";
import type { ListedSession } from "../files/read-folder.ts";
import { joinPath } from "../files/recording-names.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Reads `left-1.csv,month-7/jumps.csv#2`: files as the output names them, each with # and a number where one trial of several is meant.
 * @throws UsageError for an empty name or a number that counts no trial
 */
export function readKeepOption(typed: string): readonly KeptTrial[] {
  return typed.split(",").map((part) => {
    const [, file = "", number] = /^(.*?)(?:#(\d+))?$/.exec(part.trim()) ?? [];
    if (file === "" || number === "0") {
      throw new UsageError(`--keep is written like left-1.csv,jumps.csv#2; "${part}" is not.`);
    }
    return number === undefined ? { file } : { file, trial: Number(number) };
  });
}

/**
 * What is said for all sessions, for one of them: of the kept trials only its own.
 * @throws UsageError for a name that is none of the recordings
 */
export function keptPerSession(
  stated: StatedOptions,
  sessions: readonly ListedSession[],
): (session: ListedSession) => StatedOptions {
  const { keep, ...others } = stated;
  if (keep === undefined) return () => stated;
  for (const { file } of keep) {
    const isThere = sessions.some(({ folder, names }) => names.some((name) => joinPath(folder, name) === file));
    if (!isThere) throw new UsageError(`--keep names ${file}, which is none of the recordings.`);
  }
  return ({ folder, names }) => {
    const own = keep.flatMap((each) => {
      const name = names.find((one) => joinPath(folder, one) === each.file);
      return name === undefined ? [] : [{ ...each, file: name }];
    });
    return own.length === 0 ? others : { ...others, keep: own };
  };
}

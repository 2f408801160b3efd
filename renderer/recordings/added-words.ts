import { leftAsideWords } from "../../core/recording/left-aside-words.ts";
import { words } from "../words/words.ts";
import type { BatchFile } from "./take-in.ts";

const prose = words.screens.recordingsIntake;

/** What came of files that were added to one session: how many came in, and each that did not, with its reason. */
export function addedWords(files: readonly BatchFile[]): string {
  const nameOf = ({ picked }: BatchFile) => picked.path.slice(picked.path.lastIndexOf("/") + 1);
  const isIn = ({ outcome, folder }: BatchFile) => outcome !== "left aside" && folder !== undefined;
  const came = files.filter(isIn);
  const refused = files.filter(({ outcome }) => outcome === "refused");
  const aside = files.flatMap((file) => (file.kind === undefined ? [] : [{ path: nameOf(file), kind: file.kind }]));
  return [
    prose.takenIn(came.length),
    ...refused.map((file) =>
      file.message.startsWith(nameOf(file)) ? file.message : `${nameOf(file)}: ${file.message}`,
    ),
    leftAsideWords(aside),
  ]
    .filter((part) => part !== "")
    .join(" ");
}

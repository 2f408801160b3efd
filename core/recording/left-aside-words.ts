import { countOf, listInWords } from "../ground/plain-words.ts";
import { type OtherKind, otherKinds } from "./other-kinds.ts";

/** A file that is no recording, and was not taken for one. */
export interface LeftAside {
  readonly path: string;
  readonly kind: OtherKind;
}

/** Names given of each kind before the rest is counted. No setting: it shortens a sentence. */
const namesGiven = 3;

/** "Left aside, as they are no recordings: 15 pictures (a.png, b.png, c.png and 12 more) and 1 text (to-do.txt)."; "" for none. */
export function leftAsideWords(files: readonly LeftAside[]): string {
  if (files.length === 0) return "";
  const kinds = otherKinds.flatMap((kind) => {
    const names = files.filter((each) => each.kind === kind).map(({ path }) => path);
    return names.length === 0 ? [] : [`${counted(kind, names.length)} (${namesInWords(names)})`];
  });
  const why = files.length === 1 ? "as it is no recording" : "as they are no recordings";
  return `Left aside, ${why}: ${listInWords(kinds)}.`;
}

/** What is said of one file. */
export function leftAsideMessage(kind: OtherKind): string {
  return `This is a ${kind} and no recording; it was left aside.`;
}

function counted(kind: OtherKind, count: number): string {
  return kind === "table of results" && count > 1 ? `${count} tables of results` : countOf(count, kind);
}

function namesInWords(names: readonly string[]): string {
  if (names.length <= namesGiven + 1) return listInWords(names);
  return `${names.slice(0, namesGiven).join(", ")} and ${names.length - namesGiven} more`;
}

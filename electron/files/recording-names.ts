import { resultCsvColumns } from "../../core/sheet/result-csv.ts";

/** The file that describes the recordings of its folder. */
export const sessionFileName = "session.json";

/** True for a name that may be a recording: not hidden, and not the session's description. What a file is, its content says. */
export function isRecordingName(name: string): boolean {
  return !name.startsWith(".") && name !== sessionFileName;
}

/** The program's own table of results, saved among the recordings: never read as one. */
export function isOwnResult(bytes: Uint8Array): boolean {
  const head = `${resultCsvColumns.slice(0, 5).join(",")},`;
  return [...head].every((letter, index) => bytes[index] === letter.charCodeAt(0));
}

/** Splits `a/b/c.csv` into the folder `a/b` and the name `c.csv`; a loose file's folder is "". */
export function splitPath(path: string): { readonly folder: string; readonly name: string } {
  const at = path.lastIndexOf("/");
  return at < 0 ? { folder: "", name: path } : { folder: path.slice(0, at), name: path.slice(at + 1) };
}

/** Joins a session's folder and a name below it. */
export function joinPath(folder: string, name: string): string {
  return folder === "" ? name : `${folder}/${name}`;
}

/**
 * The beginning of a saved file's name from what people typed: letters, numbers, points, underscores and dashes. It begins
 * neither with a dash, which programs take for an option, nor with a point, which hides the file.
 */
export function fileStem(typed: string): string {
  const plain = typed.replaceAll(/[^\p{L}\p{N}._-]+/gu, "-").replace(/^[-.]+/, "");
  return plain === "" ? "unnamed" : plain;
}

/** Orders paths the same way on every machine and in every language. */
export function comparePaths(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0;
}

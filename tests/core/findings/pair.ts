import type { FindingCode } from "../../../core/ground/finding-codes.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import type { StatedOptions } from "../../../core/stated/stated-options.ts";
import { analyzeBytes } from "../../worked/worked-example.ts";
import { readText } from "../recording/recording-text.ts";
import { faultyKinds } from "../simulate/faulty/faulty-kinds.ts";
import type { FaultyFile } from "../simulate/faulty/faulty-trial.ts";

/** One recording, or session, that has a finding, and one near it that has not: the codes of each. */
export interface FindingPair {
  readonly has: () => readonly string[];
  readonly near: () => readonly string[];
}

export type FindingPairs = Partial<Record<FindingCode, FindingPair>>;

/** Odd, so not used while the findings were written. */
export const seed = 1;

export function sessionCodes({ trials, findings }: SessionResult): readonly string[] {
  return [...trials.flatMap((each) => each.findings), ...findings].map(({ code }) => code);
}

/** The codes of files in one session. */
export function codesOfFiles(
  files: Readonly<Record<string, FaultyFile["text"]>>,
  description: SessionDescription = {},
  stated: StatedOptions = {},
  settings: Settings = defaultSettings,
): readonly string[] {
  const bytes = Object.fromEntries(
    Object.entries(files).map(([path, text]) => [path, new TextEncoder().encode(text)] as const),
  );
  return sessionCodes(analyzeBytes(bytes, stated, description, settings).result);
}

/** The codes of one file with what is said about it. */
export function codesOfFile(
  { text, said, massKg }: FaultyFile,
  settings: Settings = defaultSettings,
): readonly string[] {
  const description = { files: [{ file: "jump.csv", ...said }], ...(massKg === undefined ? {} : { massKg }) };
  return codesOfFiles({ "jump.csv": text }, description, {}, settings);
}

/** The codes of one text when it is read as a recording. */
export function codesOfText(...input: Parameters<typeof readText>): readonly string[] {
  return readText(...input).findings.map(({ code }) => code);
}

/** A pair of simulated files. */
export function pairOf(has: () => FaultyFile, near: () => FaultyFile): FindingPair {
  return { has: () => codesOfFile(has()), near: () => codesOfFile(near()) };
}

/** A pair of values on either side of a finding's threshold. */
export function around<Value>(make: (value: Value) => FaultyFile, beyond: Value, within: Value): FindingPair {
  return pairOf(
    () => make(beyond),
    () => make(within),
  );
}

/** The pair that a kind of bad trial is. */
export function kindPair(kind: string): FindingPair {
  const found = faultyKinds.find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`There is no kind of bad trial called ${kind}.`);
  return pairOf(
    () => found.bad(seed),
    () => found.near(seed),
  );
}

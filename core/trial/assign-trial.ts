import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import { type TestKind, testKinds } from "../ground/test-kind.ts";
import { foldWord } from "../recording/column-words.ts";
import { testIn } from "../recording/named-in-words.ts";
import { english } from "../words/english.ts";
import type { NotOffered, RecognisedTest } from "./recognise-test.ts";

/** What was stated about a trial, strongest first: command line option, session.json. */
export interface TrialStatement {
  readonly test?: TestKind;
  readonly limb?: Limb;
}

/** Test and limb of a file's trials, with what is to be said about how they are known. */
export interface Assignment {
  readonly test?: TestKind;
  readonly limb?: Limb;
  /** True when only the loaded plate told the limb: it then proves nothing about the plates. */
  readonly limbFromPlates: boolean;
  readonly findings: readonly Finding[];
}

/** Words of a folded name (`foldWord`): English, German, French, Spanish. */
const limbWords: Readonly<Record<Limb, RegExp>> = {
  left: /\bleft\b|\blinks\b|\bgauche\b|\bizquierd[ao]\b/,
  right: /\bright\b|\brechts\b|\bdroite?\b|\bderech[ao]\b/,
  both: /\bboth\b|\btwo ?legs?\b|\bbilateral\b|\b(?:beid|zwei)beinig\b|\bdeux ?jambes\b|\bdos ?piernas\b/,
};

/**
 * Test and limb in the order of METHODS §6: stated, else from a file name with exactly one reading, else missing with
 * a refusal that says what to give. On two plates `loadedLimb` may still tell the limb. What the trace looks like is
 * offered with its reason where nothing else names the test, and never imposed.
 */
export function assignTrial(
  path: string,
  statement: TrialStatement,
  loadedLimb: Limb | undefined,
  recognised?: RecognisedTest | NotOffered,
): Assignment {
  const name = path.slice(path.lastIndexOf("/") + 1).replace(/([a-z])([A-Z])/g, "$1 $2");
  const words = foldWord(name).replace(/[^\p{L}]+/gu, " ");
  const namedTest = testIn(name);
  const namedLimb = onlyMatch(words, ["left", "right", "both"] as const, limbWords);
  const test = statement.test ?? namedTest;
  const limb = statement.limb ?? namedLimb ?? loadedLimb;
  const findings: Finding[] = [];
  if (test === undefined) {
    findings.push(
      proseFinding(
        "test-not-stated",
        "refusal",
        `Nothing says which jump test this is${traceInWords(recognised)}.`,
        `Choose the test (--test ${recognised?.test ?? testKinds[0]}, or in session.json or in the file name).`,
      ),
    );
  } else if (limb === undefined) {
    findings.push(
      proseFinding(
        "limb-not-stated",
        "refusal",
        "One plate does not tell which leg jumped, and nothing else says it.",
        "Choose the limb (--limb both, left or right, or in session.json or in the file name).",
      ),
    );
  }
  const fromName = [
    ...(statement.test === undefined && namedTest !== undefined ? [english.tests.label(namedTest)] : []),
    ...(statement.limb === undefined && namedLimb !== undefined ? [`limb ${namedLimb}`] : []),
  ];
  if (fromName.length > 0) {
    findings.push(
      proseFinding(
        "test-from-name",
        "note",
        `Taken from the file name: ${fromName.join(", ")}.`,
        "State test and limb if the file name is wrong.",
      ),
    );
  }
  const limbFromPlates = statement.limb === undefined && namedLimb === undefined && loadedLimb !== undefined;
  return { ...(test === undefined ? {} : { test }), ...(limb === undefined ? {} : { limb }), limbFromPlates, findings };
}

function traceInWords(recognised: RecognisedTest | NotOffered | undefined): string {
  if (recognised === undefined) return "";
  return recognised.test === undefined
    ? `; the trace is offered as none: ${recognised.reason}`
    : `; the trace looks like ${english.tests.withArticle(recognised.test)}: ${recognised.reason}`;
}

function onlyMatch<Key extends string>(
  words: string,
  keys: readonly Key[],
  patterns: Readonly<Record<Key, RegExp>>,
): Key | undefined {
  const matches = keys.filter((key) => patterns[key].test(words));
  return matches.length === 1 ? matches[0] : undefined;
}

import { type Finding, finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { NotOffered, RecognisedTest } from "../ground/recognised-test.ts";
import { type TestKind, testKinds } from "../ground/test-kind.ts";
import { foldWord } from "../recording/column-words.ts";
import { testIn } from "../recording/named-in-words.ts";

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
      finding("test-not-stated", "refusal", recognised === undefined ? {} : { recognised }, {
        answers: offeredFirst(recognised?.test).map((each) => ({ test: each })),
      }),
    );
  } else if (limb === undefined) {
    findings.push(
      finding(
        "limb-not-stated",
        "refusal",
        {},
        {
          answers: [{ limb: "both" }, { limb: "left" }, { limb: "right" }],
        },
      ),
    );
  }
  const fromName = {
    ...(statement.test === undefined && namedTest !== undefined ? { test: namedTest } : {}),
    ...(statement.limb === undefined && namedLimb !== undefined ? { limb: namedLimb } : {}),
  };
  if (Object.keys(fromName).length > 0) findings.push(finding("test-from-name", "note", fromName));
  const limbFromPlates = statement.limb === undefined && namedLimb === undefined && loadedLimb !== undefined;
  return { ...(test === undefined ? {} : { test }), ...(limb === undefined ? {} : { limb }), limbFromPlates, findings };
}

/** Every kind of test, the one that the trace is offered as before the others. */
function offeredFirst(offered: TestKind | undefined): readonly TestKind[] {
  return offered === undefined ? testKinds : [offered, ...testKinds.filter((each) => each !== offered)];
}

function onlyMatch<Key extends string>(
  words: string,
  keys: readonly Key[],
  patterns: Readonly<Record<Key, RegExp>>,
): Key | undefined {
  const matches = keys.filter((key) => patterns[key].test(words));
  return matches.length === 1 ? matches[0] : undefined;
}

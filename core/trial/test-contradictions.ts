import { type Finding, proseFinding } from "../ground/finding.ts";
import type { TestCourse } from "../ground/test-course.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { english } from "../words/english.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { RecognisedTest } from "./recognise-test.ts";

/** What a trace must show to be analysed as a test; a label that says otherwise is refused (METHODS §6). */
export function testContradictions(
  test: TestKind,
  cut: JumpCut,
  recognised: RecognisedTest,
  settings: Settings,
): readonly Finding[] {
  const why = reasonsAgainst[testFacts(test).course](cut, recognised, settings);
  if (why === undefined) return [];
  return [
    proseFinding(
      "test-contradicts",
      "refusal",
      `The trial is called a ${english.tests.label(test)}, but ${why}.`,
      `The trace looks like ${english.tests.withArticle(recognised.test)}: ${recognised.reason}. State the test if that is right.`,
    ),
  ];
}

type ReasonAgainst = (cut: JumpCut, recognised: RecognisedTest, settings: Settings) => string | undefined;

const onThePlate = "the athlete is on the plate before the contact, so nobody drops onto it";
const noFlight = "no flight follows the contact with the plate";
const emptyBefore = "the plate is empty before the contact";

const reasonsAgainst: Readonly<Record<TestCourse, ReasonAgainst>> = {
  dipAndJump: (cut, recognised, settings) => {
    if (cut.kind !== "standing") return cut.kind === "landing" ? noFlight : emptyBefore;
    return testFacts(recognised.test).start === "hold" && cut.quietBefore.length > 0
      ? `force never dips by ${Math.round(100 * settings.squatDipFraction)} % of body weight before the push`
      : undefined;
  },
  holdAndJump: ({ kind }) => {
    if (kind === "landing") return noFlight;
    return kind === "drop" ? emptyBefore : undefined;
  },
  dropAndJump: ({ kind }) => {
    if (kind === "landing") return noFlight;
    return kind === "standing" ? onThePlate : undefined;
  },
  dropAndLand: ({ kind }) => {
    if (kind === "standing") return onThePlate;
    return kind === "drop" ? "the athlete jumps again after the landing" : undefined;
  },
  hops: (cut, recognised) => {
    if (cut.kind === "landing") return noFlight;
    // From standing, the first flight is the entry jump's.
    const hops = cut.laterFlights.length + (cut.kind === "drop" ? 1 : 0);
    if (hops === 0) return "no contact is followed by another flight";
    return testFacts(recognised.test).flights !== "many" && cut.laterFlights.length === 0
      ? "there is only one flight, so no hop follows another"
      : undefined;
  },
};

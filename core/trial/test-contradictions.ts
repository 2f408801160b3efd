import { type Finding, finding } from "../ground/finding.ts";
import type { AgainstTest } from "../ground/findings/trial-findings.ts";
import type { RecognisedTest } from "../ground/recognised-test.ts";
import type { TestCourse } from "../ground/test-course.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";

/** What a trace must show to be analysed as a test; a label that says otherwise is refused (METHODS §6). */
export function testContradictions(
  test: TestKind,
  cut: JumpCut,
  recognised: RecognisedTest,
  settings: Settings,
): readonly Finding[] {
  const against = reasonsAgainst[testFacts(test).course](cut, recognised, settings);
  if (against === undefined) return [];
  return [finding("test-contradicts/trace", "refusal", { test, against, recognised })];
}

type ReasonAgainst = (cut: JumpCut, recognised: RecognisedTest, settings: Settings) => AgainstTest | undefined;

const onThePlate = { shows: "athlete on the plate" } as const;
const noFlight = { shows: "no flight" } as const;
const emptyBefore = { shows: "empty plate" } as const;

const reasonsAgainst: Readonly<Record<TestCourse, ReasonAgainst>> = {
  dipAndJump: (cut, recognised, settings) => {
    if (cut.kind !== "standing") return cut.kind === "landing" ? noFlight : emptyBefore;
    return testFacts(recognised.test).start === "hold" && cut.quietBefore.length > 0
      ? { shows: "no dip", weightFraction: settings.squatDipFraction }
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
    return kind === "drop" ? { shows: "another jump" } : undefined;
  },
  hops: (cut, recognised) => {
    if (cut.kind === "landing") return noFlight;
    // From standing, the first flight is the entry jump's.
    const hops = cut.laterFlights.length + (cut.kind === "drop" ? 1 : 0);
    if (hops === 0) return { shows: "no flight after a contact" };
    return testFacts(recognised.test).flights !== "many" && cut.laterFlights.length === 0
      ? { shows: "one flight" }
      : undefined;
  },
};

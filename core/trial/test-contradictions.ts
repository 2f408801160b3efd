import { type Finding, finding } from "../ground/finding.ts";
import { type TestKind, testLabel } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { RecognisedTest } from "./recognise-test.ts";

/** What a trace must show to be analysed as a test; a label that says otherwise is refused (METHODS §6). */
export function testContradictions(
  test: TestKind,
  cut: JumpCut,
  recognised: RecognisedTest,
  settings: Settings,
): readonly Finding[] {
  const why = reasonAgainst(test, cut, recognised, settings);
  if (why === undefined) return [];
  return [
    finding(
      "test-contradicts",
      "refusal",
      `The trial is called a ${testLabel(test)}, but ${why}.`,
      `The trace looks like ${withArticle(recognised.test)}: ${recognised.reason}. State the test if that is right.`,
    ),
  ];
}

/** The trade's name of a test behind its article: "a drop jump", "repeated hops". */
export function withArticle(test: TestKind): string {
  return test === "repeatedHops" ? testLabel(test) : `a ${testLabel(test)}`;
}

function reasonAgainst(
  test: TestKind,
  cut: JumpCut,
  recognised: RecognisedTest,
  settings: Settings,
): string | undefined {
  const onThePlate = "the athlete is on the plate before the contact, so nobody drops onto it";
  switch (test) {
    case "countermovementJump":
      if (cut.kind === "landing") return "no flight follows the contact with the plate";
      if (cut.kind === "drop") return "the plate is empty before the contact";
      return recognised.test === "squatJump" && cut.quietBefore.length > 0
        ? `force never dips by ${Math.round(100 * settings.squatDipFraction)} % of body weight before the push`
        : undefined;
    case "squatJump":
      if (cut.kind === "landing") return "no flight follows the contact with the plate";
      return cut.kind === "drop" ? "the plate is empty before the contact" : undefined;
    case "dropJump":
      if (cut.kind === "landing") return "no flight follows the contact with the plate";
      return cut.kind === "standing" ? onThePlate : undefined;
    case "dropLanding":
      if (cut.kind === "standing") return onThePlate;
      return cut.kind === "drop" ? "the athlete jumps again after the landing" : undefined;
    case "repeatedHops": {
      if (cut.kind === "landing") return "no flight follows the contact with the plate";
      // From standing, the first flight is the entry jump's.
      const hops = cut.laterFlights.length + (cut.kind === "drop" ? 1 : 0);
      if (hops === 0) return "no contact is followed by another flight";
      return recognised.test !== test && cut.laterFlights.length === 0
        ? "there is only one flight, so no hop follows another"
        : undefined;
    }
  }
}

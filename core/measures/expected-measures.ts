import type { MeasureId } from "../ground/measures/catalogue.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { TestKind } from "../ground/test-kind.ts";

const limbOnly = new Set(["limbTakeoffDifference", "limbTouchdownDifference"]);

function needsTwoPlates(id: MeasureId): boolean {
  return limbOnly.has(id) || id.includes("LimbNet");
}

/**
 * Identifiers of the measures that a trial of a test can have; those that compare the limbs only on two plates. One
 * that could not be made is named in a finding.
 */
export function expectedMeasures(test: TestKind, onTwoPlates: boolean): readonly MeasureId[] {
  return measureCatalogue
    .filter((entry) => entry.tests.includes(test) && (onTwoPlates || !needsTwoPlates(entry.id)))
    .map((entry) => entry.id);
}

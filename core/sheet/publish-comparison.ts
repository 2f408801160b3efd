import type { CriterionResult } from "../criteria/criterion.ts";
import { comparisonOf } from "../criteria/criterion-comparison.ts";
import { percentOf, thresholdOf } from "../ground/threshold.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { Comparison, Interval, SideSummary } from "../sides/comparison.ts";
import type { DocumentComparison, DocumentCriterion, DocumentSide } from "./document-shapes.ts";

/** The symmetry criterion that reads a comparison, where the set has one. */
export function criterionOf(session: SessionResult, comparison: Comparison): CriterionResult | undefined {
  return session.criteria.find(
    ({ criterion }) => criterion.kind === "symmetry" && comparisonOf(criterion, session.comparisons) === comparison,
  );
}

/** One comparison as the result document shows it, with the criterion that reads it. */
export function documentComparison(session: SessionResult, comparison: Comparison): DocumentComparison {
  const first = documentSide(comparison.first);
  const second = documentSide(comparison.second);
  const reader = criterionOf(session, comparison);
  const threshold = reader && percentOf(reader.criterion);
  return {
    session: session.folder,
    test: comparison.test,
    legs: comparison.legs,
    ...(comparison.dropHeightMetres === undefined ? {} : { dropHeightMetres: comparison.dropHeightMetres }),
    measure: comparison.measure,
    unit: comparison.unit,
    basis: comparison.basis,
    role: comparison.role,
    ...namedSides(comparison.basis, first, second),
    ...(comparison.index === undefined ? {} : { index: comparison.index }),
    ...(comparison.difference === undefined ? {} : { difference: comparison.difference }),
    intervals: comparison.intervals.map(documentInterval),
    ...(comparison.intervalFrom === undefined ? {} : { intervalFrom: comparison.intervalFrom }),
    ...(comparison.leads && { leads: [...comparison.leads] }),
    ...(comparison.notComparable === undefined ? {} : { notComparable: comparison.notComparable }),
    ...(comparison.plateShare && {
      plateShare: { difference: comparison.plateShare.difference, uncertainty: comparison.plateShare.uncertainty },
    }),
    ...(comparison.contradiction === undefined ? {} : { contradiction: comparison.contradiction }),
    ...(comparison.plates === undefined ? {} : { plates: comparison.plates }),
    ...(threshold === undefined ? {} : { threshold }),
    ...(reader && { status: reader.status }),
    ...(reader?.qualifier === undefined ? {} : { qualifier: reader.qualifier }),
    reason: reader ? reader.reason : comparison.intervalNote,
  };
}

/** One criterion as the result document shows it. */
export function documentCriterion(session: SessionResult, result: CriterionResult): DocumentCriterion {
  const { criterion } = result;
  return {
    session: session.folder,
    set: { id: session.criteriaSet.id, version: session.criteriaSet.version },
    id: criterion.id,
    kind: criterion.kind,
    test: criterion.test,
    legs: criterion.legs,
    measure: criterion.measure,
    ...(criterion.dropHeightMetres === undefined ? {} : { dropHeightMetres: criterion.dropHeightMetres }),
    threshold: thresholdOf(criterion).atLeast,
    ...(criterion.kind === "absolute" && { unit: criterion.unit }),
    status: result.status,
    ...(result.qualifier === undefined ? {} : { qualifier: result.qualifier }),
    ...(result.estimate === undefined ? {} : { estimate: result.estimate }),
    ...(result.lean === undefined ? {} : { lean: result.lean }),
    ...(result.interval && { interval: documentInterval(result.interval) }),
    reason: result.reason,
    moreTrials: result.moreTrials,
    caution: result.caution,
  };
}

function namedSides(
  basis: Comparison["basis"],
  first: DocumentSide,
  second: DocumentSide,
): Partial<DocumentComparison> {
  if (basis === "plates") return { plate1: first, plate2: second };
  return basis === "involved-uninvolved" ? { involved: first, uninvolved: second } : { left: first, right: second };
}

function documentSide(summary: SideSummary): DocumentSide {
  return {
    ...(summary.side === undefined ? { plate: summary.plate } : { side: summary.side }),
    trials: summary.values.length,
    values: [...summary.values],
    ...(summary.mean === undefined ? {} : { mean: summary.mean }),
    ...(summary.meanPerBodyMass === undefined ? {} : { meanPerBodyMass: summary.meanPerBodyMass }),
  };
}

function documentInterval({ confidence, low, high }: Interval): Interval {
  return { confidence, low, high };
}

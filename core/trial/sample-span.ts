/** A half-open stretch of samples [start, end), counted from the start of the recording. */
export interface SampleSpan {
  readonly start: number;
  readonly end: number;
}

/** The longest of some stretches, the first of those that are equally long. */
export function longestOf(spans: readonly SampleSpan[]): SampleSpan | undefined {
  return spans.reduce<SampleSpan | undefined>(
    (best, span) => (best === undefined || span.end - span.start > best.end - best.start ? span : best),
    undefined,
  );
}

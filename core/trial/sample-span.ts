/** A half-open stretch of samples [start, end), counted from the start of the recording. */
export interface SampleSpan {
  readonly start: number;
  readonly end: number;
}

import { isOfLimb } from "../../core/events/event.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import type { TimeRange } from "../charts/plot.tsx";

const marginSeconds = 0.4;

/** From the first to the last sample of the trial. */
export function wholeTrial(trace: TrialTrace): TimeRange {
  const from = trace.startSample / trace.rateHz;
  return { from, to: from + Math.max(1, trace.total.length - 1) / trace.rateHz };
}

/** The jump itself with a little standing around it; the whole trial where no event was found. */
export function jumpOnly(trace: TrialTrace): TimeRange {
  const whole = wholeTrial(trace);
  const times = trace.trial.events.filter((event) => !isOfLimb(event)).map((event) => event.time);
  if (times.length === 0) return whole;
  return {
    from: Math.max(whole.from, Math.min(...times) - marginSeconds),
    to: Math.min(whole.to, Math.max(...times) + marginSeconds),
  };
}

/** Half or double the stretch around its middle, never beyond the trial and never shorter than 20 ms. */
export function zoomed(range: TimeRange, factor: number, whole: TimeRange): TimeRange {
  const middle = (range.from + range.to) / 2;
  const half = Math.max(0.01, ((range.to - range.from) / 2) * factor);
  return shiftedInside({ from: middle - half, to: middle + half }, whole);
}

/** Moves the stretch by a part of its own length, never beyond the trial. */
export function panned(range: TimeRange, part: number, whole: TimeRange): TimeRange {
  const by = (range.to - range.from) * part;
  return shiftedInside({ from: range.from + by, to: range.to + by }, whole);
}

function shiftedInside(range: TimeRange, whole: TimeRange): TimeRange {
  const length = range.to - range.from;
  if (length >= whole.to - whole.from) return whole;
  const from = Math.min(Math.max(range.from, whole.from), whole.to - length);
  return { from, to: from + length };
}

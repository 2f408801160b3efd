import { chartMargins } from "./axis-layout.ts";
import type { TimeRange } from "./plot.tsx";

/** Between seconds and pixels from the left edge of a chart with the fixed margins. */
export interface TimeScale {
  readonly toPixel: (seconds: number) => number;
  readonly toSeconds: (pixel: number) => number;
  /** Pixels between the first and the last drawn instant. */
  readonly width: number;
}

export function timeScale(range: TimeRange, chartWidth: number): TimeScale {
  const width = Math.max(1, chartWidth - chartMargins.left - chartMargins.right);
  const span = range.to - range.from;
  return {
    toPixel: (seconds) => chartMargins.left + ((seconds - range.from) / span) * width,
    toSeconds: (pixel) => range.from + ((pixel - chartMargins.left) / width) * span,
    width,
  };
}

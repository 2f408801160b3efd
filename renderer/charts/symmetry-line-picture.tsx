import type { SymmetryLine } from "../../core/sheet/document.ts";
import { type SymmetryAxis, symmetryLineText } from "../../core/sheet/symmetry-line.ts";
import { IntervalLine } from "./interval-line.tsx";

interface SymmetryLinePictureProps {
  readonly line: SymmetryLine;
  readonly axis: SymmetryAxis;
  /** Writes the threshold and 100 under their ticks; wanted once in a table. */
  readonly numbered?: boolean;
}

/** The index on a line, drawn like the sheet's, in the colours of the screen. */
export function SymmetryLinePicture({ line, axis, numbered = false }: SymmetryLinePictureProps) {
  const { index, threshold, limb, ...bars } = line;
  const ticks = [...(threshold === undefined ? [] : [threshold]), 100];
  return (
    <IntervalLine
      {...bars}
      value={index}
      {...(threshold === undefined ? {} : { threshold })}
      mark={100}
      axis={axis}
      colour={limb === "involved" ? "var(--involved)" : "var(--ink)"}
      description={symmetryLineText(line)}
      {...(numbered ? { labels: ticks.map((at) => ({ at, text: String(at) })) } : {})}
    />
  );
}

import type { SymmetryLine } from "../../core/sheet/document.ts";
import { type SymmetryAxis, symmetryLineText } from "../../core/sheet/symmetry-line.ts";

interface SymmetryLinePictureProps {
  readonly line: SymmetryLine;
  readonly axis: SymmetryAxis;
  /** Writes the threshold and 100 under their ticks; wanted once in a table. */
  readonly numbered?: boolean;
  /** Drawn in muted ink where it is in doubt which side is which. */
  readonly inDoubt?: boolean;
}

const width = 200;
const inset = 5;
const height = 20;
const middle = height / 2;

/** The index on a line, drawn like the sheet's, in the colours of the screen. */
export function SymmetryLinePicture({ line, axis, numbered = false, inDoubt = false }: SymmetryLinePictureProps) {
  const place = (percent: number) => {
    const part = (percent - axis.low) / (axis.high - axis.low);
    return inset + Math.min(1, Math.max(0, part)) * (width - 2 * inset);
  };
  const mark = inDoubt ? "var(--muted)" : line.limb === "involved" ? "var(--involved)" : "var(--ink)";
  const { threshold, thick, thin } = line;
  return (
    <svg
      className="symmetry-line"
      viewBox={`0 0 ${width} ${numbered ? height + 14 : height}`}
      role="img"
      aria-label={symmetryLineText(line)}
    >
      {threshold !== undefined && (
        <rect
          x={place(threshold)}
          y={3}
          width={width - inset - place(threshold)}
          height={height - 6}
          fill="var(--band2)"
        />
      )}
      <Bar from={inset} to={width - inset} stroke="var(--line)" thickness={1} />
      <path d={`M${place(100)} ${middle - 4}V${middle + 4}`} stroke="var(--ink)" strokeWidth={0.9} />
      {threshold !== undefined && (
        <path d={`M${place(threshold)} 0.5V${height - 0.5}`} stroke="var(--ink)" strokeWidth={1.7} />
      )}
      {thin !== undefined && <Bar from={place(thin.low)} to={place(thin.high)} stroke={mark} thickness={1.1} />}
      {thick !== undefined && <Bar from={place(thick.low)} to={place(thick.high)} stroke={mark} thickness={3.6} />}
      <Leaving ends={thin ?? thick} axis={axis} stroke={mark} />
      <circle cx={place(line.index)} cy={middle} r={4} fill="var(--surface)" stroke={mark} strokeWidth={1.9} />
      {numbered && <TickNumbers place={place} threshold={threshold} />}
    </svg>
  );
}

function Bar(props: { from: number; to: number; stroke: string; thickness: number }) {
  return <path d={`M${props.from} ${middle}H${props.to}`} stroke={props.stroke} strokeWidth={props.thickness} />;
}

type Place = (percent: number) => number;

function TickNumbers({ place, threshold }: { place: Place; threshold: number | undefined }) {
  const apart = threshold !== undefined && Math.abs(place(threshold) - place(100)) > 22;
  return (
    <g fill="var(--muted)" fontSize={11} textAnchor="middle">
      {threshold !== undefined && (
        <text x={place(threshold)} y={height + 10}>
          {threshold}
        </text>
      )}
      {(threshold === undefined || apart) && (
        <text x={place(100)} y={height + 10}>
          100
        </text>
      )}
    </g>
  );
}

/** An interval that leaves the drawn range ends in an arrow head. */
function Leaving({ ends, axis, stroke }: { ends: SymmetryLine["thick"]; axis: SymmetryAxis; stroke: string }) {
  if (ends === undefined) return null;
  const left = `M${inset + 4} ${middle - 3.5}L${inset} ${middle}L${inset + 4} ${middle + 3.5}`;
  const right = `M${width - inset - 4} ${middle - 3.5}L${width - inset} ${middle}L${width - inset - 4} ${middle + 3.5}`;
  const path = `${ends.low < axis.low ? left : ""}${ends.high > axis.high ? right : ""}`;
  return path === "" ? null : <path d={path} fill="none" stroke={stroke} strokeWidth={1.1} />;
}

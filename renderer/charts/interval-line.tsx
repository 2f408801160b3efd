interface Ends {
  readonly low: number;
  readonly high: number;
}

interface IntervalLineProps {
  readonly value: number;
  /** The interval the status rests on, and the wider one drawn thin behind it. */
  readonly thick?: Ends;
  readonly thin?: Ends;
  readonly threshold?: number;
  /** A value marked with a short tick. */
  readonly mark?: number;
  /** The drawn range, in the unit of the values. */
  readonly axis: Ends;
  readonly colour: string;
  /** What the line shows, for those who do not see it. */
  readonly description: string;
  /** Words under the ticks, the foremost first; one that would touch an earlier one is left out. */
  readonly labels?: readonly { readonly at: number; readonly text: string }[];
}

const width = 200;
const inset = 5;
const height = 20;
const middle = height / 2;
const labelHeight = 14;
/** Width a figure takes on average at the size of the labels. */
const figurePixels = 6;

/**
 * A value on a line: open dot, its interval as a thick bar with the wider one thin behind it, the threshold as a tall
 * tick with the region beyond it lightly shaded. A bar that leaves the range ends in an arrow head.
 */
export function IntervalLine(props: IntervalLineProps) {
  const { value, thick, thin, threshold, mark, axis, colour, labels = [] } = props;
  const place = (at: number) => {
    const part = (at - axis.low) / (axis.high - axis.low);
    return inset + Math.min(1, Math.max(0, part)) * (width - 2 * inset);
  };
  return (
    <svg
      className="interval-line"
      viewBox={`0 0 ${width} ${labels.length > 0 ? height + labelHeight : height}`}
      role="img"
      aria-label={props.description}
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
      {mark !== undefined && (
        <path d={`M${place(mark)} ${middle - 4}V${middle + 4}`} stroke="var(--ink)" strokeWidth={0.9} />
      )}
      {threshold !== undefined && (
        <path d={`M${place(threshold)} 0.5V${height - 0.5}`} stroke="var(--ink)" strokeWidth={1.7} />
      )}
      {thin !== undefined && <Bar from={place(thin.low)} to={place(thin.high)} stroke={colour} thickness={1.1} />}
      {thick !== undefined && <Bar from={place(thick.low)} to={place(thick.high)} stroke={colour} thickness={3.6} />}
      <Leaving ends={thin ?? thick} axis={axis} stroke={colour} />
      <circle cx={place(value)} cy={middle} r={4} fill="var(--surface)" stroke={colour} strokeWidth={1.9} />
      <g fill="var(--muted)" fontSize={11} textAnchor="middle">
        {apart(labels.map(({ at, text }) => ({ at: place(at), text }))).map(({ at, text }) => (
          <text key={text} x={at} y={height + 10}>
            {text}
          </text>
        ))}
      </g>
    </svg>
  );
}

interface PlacedLabel {
  readonly at: number;
  readonly text: string;
}

/** Labels in their order, without those that would touch one before them; none leaves the picture. */
function apart(labels: readonly PlacedLabel[]): readonly PlacedLabel[] {
  const kept: PlacedLabel[] = [];
  const half = ({ text }: PlacedLabel) => (text.length * figurePixels) / 2;
  for (const label of labels) {
    const at = Math.min(width - half(label), Math.max(half(label), label.at));
    const free = kept.every((other) => Math.abs(other.at - at) > half(other) + half(label) + 4);
    if (free) kept.push({ ...label, at });
  }
  return kept;
}

function Bar(props: { from: number; to: number; stroke: string; thickness: number }) {
  return <path d={`M${props.from} ${middle}H${props.to}`} stroke={props.stroke} strokeWidth={props.thickness} />;
}

/** An interval that leaves the drawn range ends in an arrow head. */
function Leaving({ ends, axis, stroke }: { ends: Ends | undefined; axis: Ends; stroke: string }) {
  if (ends === undefined) return null;
  const left = `M${inset + 4} ${middle - 3.5}L${inset} ${middle}L${inset + 4} ${middle + 3.5}`;
  const right = `M${width - inset - 4} ${middle - 3.5}L${width - inset} ${middle}L${width - inset - 4} ${middle + 3.5}`;
  const path = `${ends.low < axis.low ? left : ""}${ends.high > axis.high ? right : ""}`;
  return path === "" ? null : <path d={path} fill="none" stroke={stroke} strokeWidth={1.1} />;
}

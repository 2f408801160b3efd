import { percentDigits } from "../ground/format-number.ts";
import type { SymmetryLine } from "./document.ts";

/** The drawn range of a table's symmetry lines, in per cent. */
export interface SymmetryAxis {
  readonly low: number;
  readonly high: number;
}

/** CSS colours of the parts of a symmetry line. */
export interface SymmetryLineColours {
  readonly axis: string;
  /** The region at or beyond the threshold. */
  readonly region: string;
  readonly tick: string;
  readonly involved: string;
  readonly ink: string;
  /** Inside of the open dot. */
  readonly paper: string;
}

/** Width and height of the drawing in CSS pixels or points. */
export const symmetryLineSize = { width: 116, height: 18 } as const;

const inset = 4;
const smallestAxis: SymmetryAxis = { low: 60, high: 120 };
const largestAxis: SymmetryAxis = { low: 20, high: 200 };

/** One axis for all lines of a table, in steps of ten, wide enough for every interval within reason. */
export function symmetryAxis(lines: readonly SymmetryLine[]): SymmetryAxis {
  const ends = lines.flatMap((line) => [
    line.index,
    ...[line.thick, line.thin].flatMap((bar) => (bar ? [bar.low, bar.high] : [])),
  ]);
  const low = Math.floor(Math.min(smallestAxis.low, ...ends) / 10) * 10;
  const high = Math.ceil(Math.max(smallestAxis.high, ...ends) / 10) * 10;
  return { low: Math.max(low, largestAxis.low), high: Math.min(high, largestAxis.high) };
}

/** The line in words, for readers who do not see it. */
export function symmetryLineText(line: SymmetryLine): string {
  const { threshold } = line;
  const digits = (percent: number) => percentDigits(percent, threshold === undefined ? [] : [threshold]);
  const bar = (name: string, ends: { readonly low: number; readonly high: number } | undefined) =>
    ends ? `, ${name} ${digits(ends.low)} to ${digits(ends.high)}` : "";
  const against = threshold === undefined ? "" : `, threshold ${percentDigits(threshold)}`;
  return `Index ${digits(line.index)} per cent${bar("interval", line.thick)}${bar("wider interval", line.thin)}${against}`;
}

/**
 * The index on a line: open dot, interval as a thick bar with the wider one thin behind it, threshold as a tall tick
 * with the region beyond it lightly shaded, 100 % as a short tick. A bar that leaves the axis ends in an arrow head.
 */
export function symmetryLineSvg(line: SymmetryLine, axis: SymmetryAxis, colours: SymmetryLineColours): string {
  const { width, height } = symmetryLineSize;
  const middle = height / 2;
  const place = (percent: number) => {
    const part = (percent - axis.low) / (axis.high - axis.low);
    return round(inset + Math.min(1, Math.max(0, part)) * (width - 2 * inset));
  };
  const mark = line.limb === "involved" ? colours.involved : colours.ink;
  const bar = (ends: { readonly low: number; readonly high: number } | undefined, thickness: number) =>
    ends === undefined ? "" : stroke(`M${place(ends.low)} ${middle}H${place(ends.high)}`, mark, thickness);
  const widest = line.thin ?? line.thick;
  const arrows = widest === undefined ? "" : arrowHeads(widest, axis, place, middle, mark);
  const beyond = line.threshold === undefined ? "" : region(place(line.threshold), colours.region);
  const threshold =
    line.threshold === undefined ? "" : stroke(`M${place(line.threshold)} 1V${height - 1}`, colours.tick, 1.5);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${symmetryLineText(line)}">`,
    beyond,
    stroke(`M${inset} ${middle}H${width - inset}`, colours.axis, 1),
    stroke(`M${place(100)} ${middle - 4}V${middle + 4}`, colours.tick, 0.8),
    threshold,
    bar(line.thin, 1),
    arrows,
    bar(line.thick, 3.2),
    `<circle cx="${place(line.index)}" cy="${middle}" r="3.4" style="fill:${colours.paper};stroke:${mark};stroke-width:1.6"/>`,
    "</svg>",
  ].join("");
}

function stroke(path: string, colour: string, thickness: number): string {
  return `<path d="${path}" style="fill:none;stroke:${colour};stroke-width:${thickness}"/>`;
}

function region(from: number, colour: string): string {
  const { width, height } = symmetryLineSize;
  return `<rect x="${from}" y="3" width="${round(width - inset - from)}" height="${height - 6}" style="fill:${colour}"/>`;
}

function arrowHeads(
  ends: { readonly low: number; readonly high: number },
  axis: SymmetryAxis,
  place: (percent: number) => number,
  middle: number,
  colour: string,
): string {
  const left = place(axis.low);
  const right = place(axis.high);
  return [
    ends.low < axis.low
      ? stroke(`M${left + 4} ${middle - 3}L${left} ${middle}L${left + 4} ${middle + 3}`, colour, 1)
      : "",
    ends.high > axis.high
      ? stroke(`M${right - 4} ${middle - 3}L${right} ${middle}L${right - 4} ${middle + 3}`, colour, 1)
      : "",
  ].join("");
}

function round(length: number): number {
  return Math.round(length * 100) / 100;
}

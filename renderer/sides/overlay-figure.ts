import type { Data, Layout } from "plotly.js";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import type { Alignment, CurveOverlay, SideCurves } from "../../core/sides/curves.ts";
import { axis, baseLayout } from "../charts/axis-layout.ts";
import { type ChartColours, limbLine } from "../charts/chart-colours.ts";
import { decimate } from "../charts/decimate.ts";
import type { TimeRange } from "../charts/plot.tsx";
import { bearerRole } from "../shell/limb-role.ts";
import { words } from "../words/words.ts";

const prose = words.screens.sides;

export const alignmentWords: Readonly<Record<Alignment, string>> = {
  takeoff: prose.takeOff,
  onset: prose.onset,
  touchdown: prose.touchdown,
};

/** All the time there is to draw. */
export function overlayRange({ timeSeconds }: CurveOverlay): TimeRange {
  return { from: timeSeconds[0] ?? 0, to: timeSeconds.at(-1) ?? 1 };
}

/** Both sides over each other: every trial thin, the mean thick, one standard deviation around it as a band. */
export function overlayFigure(
  overlay: CurveOverlay,
  range: TimeRange,
  involved: InvolvedSide | undefined,
  colours: ChartColours,
): { data: Partial<Data>[]; layout: Partial<Layout> } {
  const event = alignmentWords[overlay.alignedAt];
  const sides = [overlay.second, overlay.first];
  return {
    data: [
      ...sides.flatMap((side) => bandOf(side, overlay, range, lineOf(side, involved, colours).color)),
      ...sides.flatMap((side) => trialsOf(side, overlay, range, lineOf(side, involved, colours))),
      ...sides.map((side) => meanOf(side, overlay, range, lineOf(side, involved, colours))),
    ],
    layout: {
      ...baseLayout(colours),
      xaxis: {
        ...axis(prose.timeFrom(event), colours),
        fixedrange: false,
        range: [range.from, range.to],
        showgrid: false,
      },
      yaxis: { ...axis(prose.forceAxis, colours), rangemode: "tozero", tickformat: ".1f" },
      shapes: [
        {
          type: "line",
          xref: "x",
          yref: "paper",
          x0: 0,
          x1: 0,
          y0: 0,
          y1: 1,
          line: { color: colours.muted, width: 1, dash: "dot" },
        },
      ],
      annotations: [
        { xref: "x", yref: "paper", x: 0, y: 1, yanchor: "bottom", showarrow: false, text: event, font: { size: 13 } },
      ],
    },
  };
}

type LimbLine = ReturnType<typeof limbLine>;

function lineOf(side: SideCurves, involved: InvolvedSide | undefined, colours: ChartColours): LimbLine {
  return limbLine(bearerRole(side, involved), colours);
}

function thinned(values: Float64Array, { timeSeconds }: CurveOverlay, range: TimeRange) {
  const startSeconds = timeSeconds[0] ?? 0;
  const stepSeconds = (timeSeconds[1] ?? startSeconds + 1) - startSeconds;
  return decimate({ values, startSeconds, stepSeconds }, range);
}

function trialsOf(side: SideCurves, overlay: CurveOverlay, range: TimeRange, form: LimbLine): Partial<Data>[] {
  return side.curves.map(({ values }) => ({
    type: "scatter",
    mode: "lines",
    ...thinned(values, overlay, range),
    // the form of the line is left to the mean: many thin dashed lines over each other are a blur
    // a colour that lets through, not a faint group: groups over each other are painted wrongly by some browsers
    line: { color: translucent(form.color, 0.55), width: 0.7, simplify: false },
  }));
}

function meanOf(side: SideCurves, overlay: CurveOverlay, range: TimeRange, form: LimbLine): Partial<Data> {
  return {
    type: "scatter",
    mode: "lines",
    ...thinned(side.mean, overlay, range),
    line: { color: form.color, dash: form.dash, width: 2.6, simplify: false },
  };
}

function bandOf(side: SideCurves, overlay: CurveOverlay, range: TimeRange, color: string): Partial<Data>[] {
  if (side.standardDeviation.length === 0) return [];
  const edge = (sign: 1 | -1) =>
    thinned(
      side.mean.map((mean, at) => mean + sign * (side.standardDeviation[at] ?? Number.NaN)),
      overlay,
      range,
    );
  const upper = withoutGaps(edge(1));
  const lower = withoutGaps(edge(-1));
  return [
    {
      type: "scatter",
      mode: "none",
      x: [...upper.x, ...lower.x.toReversed()],
      y: [...upper.y, ...lower.y.toReversed()],
      fill: "toself",
      fillcolor: translucent(color, 0.16),
      hoverinfo: "skip",
    },
  ];
}

function withoutGaps(points: { readonly x: number[]; readonly y: number[] }) {
  const kept = points.y.map((value) => !Number.isNaN(value));
  return { x: points.x.filter((_, at) => kept[at]), y: points.y.filter((_, at) => kept[at]) };
}

/** "#9c2f5e" with an opacity, as the chart library wants it. */
function translucent(hexColour: string, opacity: number): string {
  const channel = (at: number) => Number.parseInt(hexColour.slice(at, at + 2), 16);
  return `rgba(${channel(1)},${channel(3)},${channel(5)},${opacity})`;
}

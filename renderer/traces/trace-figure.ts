import type { Annotation, Data, Layout, Shape } from "plotly.js";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { displayUnit } from "../../core/ground/units.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { axis, baseLayout, chartMargins } from "../charts/axis-layout.ts";
import { type ChartColours, limbLine } from "../charts/chart-colours.ts";
import { decimate } from "../charts/decimate.ts";
import type { TimeRange } from "../charts/plot.tsx";
import { bearerRole, plateBearer } from "../shell/limb-role.ts";
import { words } from "../words/words.ts";
import { legendNamesWeight, weightText } from "./weight-words.ts";

const prose = words.screens.traces;

/** Curves drawn on demand, each on an axis of its own under the force. */
export const extraCurves = ["velocity", "displacement", "power"] as const;

export type ExtraCurve = (typeof extraCurves)[number];

export interface TraceFigureInput {
  readonly trace: TrialTrace;
  readonly range: TimeRange;
  readonly extras: readonly ExtraCurve[];
  /** Draws the total force after the display filter instead of the force as recorded. */
  readonly filtered: boolean;
  readonly involved: InvolvedSide | undefined;
  readonly colours: ChartColours;
  /** Height of the whole chart and of each extra axis in pixels. */
  readonly height: number;
  readonly extraHeight: number;
}

const axisTitles: Readonly<Record<ExtraCurve, string>> = {
  velocity: prose.velocityAxis,
  displacement: prose.displacementAxis(displayUnit("m").symbol),
  power: prose.powerAxis,
};

/** The chart of one trial: force on top, the curves asked for below it on the same time axis. */
export function traceFigure(input: TraceFigureInput): { data: Partial<Data>[]; layout: Partial<Layout> } {
  const { trace, range, extras, colours } = input;
  const shownExtras = extras.filter((name) => trace[name].length > 0);
  const domains = axisDomains(input.height, input.extraHeight, shownExtras.length);
  const data = forceCurves(input);
  const layout: Partial<Layout> = {
    ...baseLayout(colours),
    xaxis: {
      ...axis(prose.timeAxis, colours),
      fixedrange: false,
      range: [range.from, range.to],
      showgrid: false,
      anchor: shownExtras.length === 0 ? "y" : axisName(shownExtras.length + 1),
    },
    yaxis: { ...axis(prose.forceAxis, colours), domain: domains[0] ?? [0, 1], rangemode: "tozero" },
    ...bodyWeightLine(input),
  };
  shownExtras.forEach((name, index) => {
    const scale = name === "displacement" ? displayUnit("m").factor : 1;
    const points = curve(input, trace[name]);
    data.push({
      ...line(points.x, scale === 1 ? points.y : points.y.map((value) => value * scale), colours.total, "solid", 1.4),
      yaxis: axisName(index + 2),
    });
    const extraAxis = { ...axis(axisTitles[name], colours), domain: domains[index + 1] ?? [0, 1], nticks: 4 };
    Object.assign(layout, { [`yaxis${index + 2}`]: { ...extraAxis, zeroline: true, zerolinecolor: colours.muted } });
  });
  return { data, layout };
}

function forceCurves(input: TraceFigureInput): Partial<Data>[] {
  const { trace, colours, involved, filtered } = input;
  const drawn: Partial<Data>[] = [];
  if (trace.plates.length > 1 || trace.plates.every((plate) => plate.limb === "both")) {
    const points = curve(input, filtered ? trace.filtered : trace.total);
    const alone = trace.plates.length === 1;
    drawn.push(line(points.x, points.y, colours.total, "solid", alone ? 1.6 : 1.2));
  }
  for (const [index, plate] of trace.plates.entries()) {
    if (plate.limb === "both") continue;
    const form = limbLine(bearerRole(plateBearer(trace.trial, index), involved), colours);
    const points = curve(input, trace.plates.length === 1 && filtered ? trace.filtered : plate.force);
    drawn.push(line(points.x, points.y, form.color, form.dash, 2));
  }
  return drawn;
}

function curve({ trace, range }: TraceFigureInput, values: Float64Array) {
  const stepSeconds = 1 / trace.rateHz;
  return decimate({ values, startSeconds: trace.startSample * stepSeconds, stepSeconds }, range);
}

function line(x: number[], y: number[], color: string, dash: "solid" | "dash", width: number): Partial<Data> {
  return { type: "scatter", mode: "lines", x, y, line: { color, dash, width, simplify: false } };
}

/**
 * Body weight as a labelled line; nothing where the trial has no weight. Where curves cross it soon, the legend names the
 * line.
 */
function bodyWeightLine({ trace, colours }: TraceFigureInput): {
  shapes?: Partial<Shape>[];
  annotations?: Partial<Annotation>[];
} {
  const { weight } = trace.trial;
  if (weight === undefined) return {};
  return {
    shapes: [
      {
        type: "line",
        xref: "paper",
        yref: "y",
        x0: 0,
        x1: 1,
        y0: weight.newtons,
        y1: weight.newtons,
        line: { color: colours.muted, width: 1, dash: "dot" },
      },
    ],
    annotations: legendNamesWeight(trace.trial)
      ? []
      : [
          {
            xref: "paper",
            yref: "y",
            // before the movement: a standing athlete, or an empty plate whose curve lies far below
            x: 0,
            y: weight.newtons,
            xanchor: "left",
            yanchor: "bottom",
            showarrow: false,
            text: prose.bodyWeight(weightText(weight)),
            font: { color: colours.muted, size: 13 },
          },
        ],
  };
}

/** "y" for the first axis, "y2", "y3" … for those below it. */
function axisName(number: number): "y" | "y2" | "y3" | "y4" {
  const names = ["y", "y2", "y3", "y4"] as const;
  return names[number - 1] ?? "y";
}

/** Where each axis stands between 0 (bottom) and 1 (top): force first, then the extra ones downwards. */
function axisDomains(height: number, extraHeight: number, extras: number): readonly [number, number][] {
  const drawable = Math.max(1, height - chartMargins.top - chartMargins.bottom);
  const part = extraHeight / drawable;
  const gap = 12 / drawable;
  const domains: [number, number][] = [[Math.min(0.9, extras * part), 1]];
  for (let index = 0; index < extras; index++) {
    const top = (extras - index) * part;
    domains.push([Math.max(0, top - part), Math.max(0, top - gap)]);
  }
  return domains;
}

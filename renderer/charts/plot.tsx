import { useElementSize, useMergedRef } from "@mantine/hooks";
import type { Data, Layout, PlotlyHTMLElement } from "plotly.js";
import { useEffect, useRef } from "react";
import { Plotly } from "./plotly.ts";

/** A stretch of the time axis in seconds. */
export interface TimeRange {
  readonly from: number;
  readonly to: number;
}

interface PlotProps {
  readonly data: readonly Partial<Data>[];
  readonly layout: Partial<Layout>;
  readonly height: number;
  /** What the picture shows, for those who do not see it. */
  readonly description: string;
  /** Called when the person has dragged out a stretch of time; `undefined` asks for the whole again. */
  readonly onTimeRange?: (range: TimeRange | undefined) => void;
  /** Called with the plot each time what was asked for stands on the screen; it then carries `data-drawn`. */
  readonly onDrawn?: (plot: HTMLElement) => void;
}

/** The chart library's plot as a component. It draws; everything that is edited stands in an overlay of its own. */
export function Plot({ data, layout, height, description, onTimeRange, onDrawn }: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const { ref: measured, width } = useElementSize();
  const both = useMergedRef(place, measured);
  const listener = useRef(onTimeRange);
  listener.current = onTimeRange;
  const drawnListener = useRef(onDrawn);
  drawnListener.current = onDrawn;

  // The library draws over several turns and must not be taken away in between: one drawing waits for the other, and
  // of those that wait only the latest is drawn.
  const steps = useRef<Promise<unknown>>(Promise.resolve());
  const latest = useRef<() => Promise<unknown>>(undefined);

  useEffect(() => {
    const element = place.current;
    if (element === null || width === 0) return;
    const draw = () =>
      Plotly.react(
        element,
        [...data] as Data[],
        { ...layout, width, height, autosize: false },
        { displayModeBar: false, responsive: false, doubleClick: false, showTips: false },
      ).then((plotted) => {
        listenOnce(plotted, (range) => listener.current?.(range));
        if (latest.current !== draw) return;
        element.dataset.drawn = "";
        drawnListener.current?.(element);
      });
    latest.current = draw;
    delete element.dataset.drawn;
    steps.current = steps.current.then(() => (latest.current === draw ? draw() : undefined)).catch(reportError);
  }, [data, layout, width, height]);

  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    return () => {
      latest.current = undefined;
      void steps.current.then(() => Plotly.purge(element));
    };
  }, []);

  return <div ref={both} className="plot" role="img" aria-label={description} style={{ height }} />;
}

const listened = new WeakSet<PlotlyHTMLElement>();

function listenOnce(plotted: PlotlyHTMLElement, onRange: (range: TimeRange | undefined) => void): void {
  if (listened.has(plotted)) return;
  listened.add(plotted);
  plotted.on("plotly_relayout", (event) => {
    const from = event["xaxis.range[0]"];
    const to = event["xaxis.range[1]"];
    if (typeof from === "number" && typeof to === "number") onRange({ from, to });
  });
  plotted.on("plotly_doubleclick", () => onRange(undefined));
}

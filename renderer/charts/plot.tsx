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
}

/** The chart library's plot as a component. It draws; everything that is edited stands in an overlay of its own. */
export function Plot({ data, layout, height, description, onTimeRange }: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const listener = useRef(onTimeRange);
  listener.current = onTimeRange;

  // The library draws over several turns and must not be taken away in between: one step waits for the other.
  const steps = useRef<Promise<unknown>>(Promise.resolve());
  const gone = useRef(false);
  const take = useRef((step: (element: HTMLDivElement) => unknown) => {
    const element = place.current;
    if (element === null) return;
    steps.current = steps.current.then(() => (gone.current ? undefined : step(element))).catch(reportError);
  });

  useEffect(() => {
    take.current((element) =>
      Plotly.react(
        element,
        [...data] as Data[],
        { ...layout, height, autosize: true },
        { displayModeBar: false, responsive: false, doubleClick: false, showTips: false },
      ).then((plotted) => listenOnce(plotted, (range) => listener.current?.(range))),
    );
  }, [data, layout, height]);

  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    gone.current = false;
    const observer = new ResizeObserver(() =>
      take.current(() => {
        if (element.clientWidth > 0 && element.querySelector(".main-svg") !== null) return Plotly.Plots.resize(element);
      }),
    );
    observer.observe(element);
    return () => {
      observer.disconnect();
      gone.current = true;
      void steps.current.then(() => Plotly.purge(element));
    };
  }, []);

  return <div ref={place} className="plot" role="img" aria-label={description} style={{ height }} />;
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

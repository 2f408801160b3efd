import { useElementSize } from "@mantine/hooks";
import { useMemo } from "react";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { useChartColours } from "../charts/chart-colours.ts";
import { Plot, type TimeRange } from "../charts/plot.tsx";
import { timeScale } from "../charts/time-scale.ts";
import { words } from "../words/words.ts";
import { EventOverlay } from "./event-overlay.tsx";
import { PhaseRibbon } from "./phase-ribbon.tsx";
import { type ExtraCurve, traceFigure } from "./trace-figure.ts";
import type { EventDraftState } from "./use-event-draft.ts";

const prose = words.screens.traces;

interface TraceChartProps {
  readonly trace: TrialTrace;
  readonly title: string;
  readonly involved: InvolvedSide | undefined;
  readonly range: TimeRange;
  readonly onRange: (range: TimeRange | undefined) => void;
  readonly extras: readonly ExtraCurve[];
  readonly filtered: boolean;
  readonly draft: EventDraftState;
  /** Called with the plot whenever the trial's curves stand on the screen. */
  readonly onDrawn: (plot: HTMLElement) => void;
}

const extraHeight = 120;
/** Leaves the force curve the 200 pixels from which on a trial counts as seen, beside margins and the room above it. */
const leastForceHeight = 290;

/** The curves of a trial with its events on top and its phases underneath. */
export function TraceChart(props: TraceChartProps) {
  const { trace, range, extras, filtered, involved, draft, title } = props;
  const { ref, width, height: roomHeight } = useElementSize();
  const colours = useChartColours();
  const shownExtras = extras.filter((name) => trace[name].length > 0).length;
  const height = Math.max(Math.floor(roomHeight), leastForceHeight + shownExtras * extraHeight);
  const { data, layout } = useMemo(
    () => traceFigure({ trace, range, extras, filtered, involved, colours, height, extraHeight }),
    [trace, range, extras, filtered, involved, colours, height],
  );
  const scale = timeScale(range, width);
  return (
    <>
      <div className="trace-chart" ref={ref} style={{ minHeight: leastForceHeight + shownExtras * extraHeight }}>
        {width > 0 && (
          <div className="trace-chart-stack">
            <Plot
              data={data}
              layout={layout}
              height={height}
              description={prose.forceOverTime(title)}
              onTimeRange={props.onRange}
              onDrawn={props.onDrawn}
            />
            <EventOverlay trial={trace.trial} scale={scale} draft={draft} />
          </div>
        )}
      </div>
      {width > 0 && trace.phases.length > 0 && <PhaseRibbon phases={trace.phases} scale={scale} />}
    </>
  );
}

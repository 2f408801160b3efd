import { Button, NativeSelect, SegmentedControl } from "@mantine/core";
import { useElementSize } from "@mantine/hooks";
import { useMemo, useState } from "react";
import type { InvolvedSide } from "../../core/limb.ts";
import type { SessionResult } from "../../core/result.ts";
import type { CurveOverlay, SideCurves } from "../../core/sides/curves.ts";
import { useChartColours } from "../charts/chart-colours.ts";
import { Plot, type TimeRange } from "../charts/plot.tsx";
import { limbRole, limbWords } from "../shell/limb-role.ts";
import { legsOf, testWords } from "../shell/words.ts";
import { alignmentWords, overlayFigure, overlayRange } from "./overlay-figure.ts";
import { type OverlayChoice, useOverlay } from "./use-overlay.ts";

const leastChartHeight = 330;

/** Both sides' curves of one test over each other. */
export function OverlayPanel({ session }: { readonly session: SessionResult }) {
  const { involved } = session.description;
  const tests = useMemo(() => drawableTests(session), [session]);
  const [testKey, setTestKey] = useState("");
  const [alignedAt, setAlignedAt] = useState<CurveOverlay["alignedAt"]>("takeoff");
  const shown = tests.find((each) => each.key === testKey) ?? tests.find((each) => each.legs === "single") ?? tests[0];
  const { test, legs } = shown ?? {};
  const choice = useMemo<OverlayChoice | undefined>(
    () => (test === undefined || legs === undefined ? undefined : { test, legs, alignedAt }),
    [test, legs, alignedAt],
  );
  const reply = useOverlay(session, choice);
  return (
    <section className="panel panel-padded overlay-panel" aria-labelledby="overlay-title">
      <div className="overlay-head">
        <div>
          <h2 id="overlay-title" className="panel-title">
            Curves of both sides
          </h2>
          <p className="muted">force in body weights, aligned at {alignmentWords[alignedAt]}</p>
        </div>
        <div className="overlay-tools">
          {tests.length > 1 && (
            <NativeSelect
              aria-label="Test drawn"
              size="xs"
              value={shown?.key ?? ""}
              onChange={(event) => setTestKey(event.currentTarget.value)}
              data={tests.map(({ key, words }) => ({ value: key, label: words }))}
            />
          )}
          <SegmentedControl
            aria-label="Aligned at"
            size="xs"
            value={alignedAt}
            onChange={(value) => setAlignedAt(value === "onset" ? "onset" : "takeoff")}
            data={[
              { value: "takeoff", label: "at take-off" },
              { value: "onset", label: "at onset" },
            ]}
          />
        </div>
      </div>
      {reply?.overlay === undefined ? (
        <p className="overlay-empty muted">
          {reply === undefined && choice !== undefined
            ? "Drawing …"
            : "There is nothing to draw: both sides need at least one trial that is not excluded."}
        </p>
      ) : (
        <OverlayChart
          key={`${shown?.key} ${reply.overlay.alignedAt}`}
          overlay={reply.overlay}
          involved={involved}
          title={shown?.words ?? ""}
        />
      )}
    </section>
  );
}

interface OverlayChartProps {
  readonly overlay: CurveOverlay;
  readonly involved: InvolvedSide | undefined;
  readonly title: string;
}

function OverlayChart({ overlay, involved, title }: OverlayChartProps) {
  const colours = useChartColours();
  const [zoom, setZoom] = useState<TimeRange>();
  const { ref, height: room } = useElementSize();
  const { data, layout } = useMemo(
    () => overlayFigure(overlay, zoom ?? overlayRange(overlay), involved, colours),
    [overlay, zoom, involved, colours],
  );
  return (
    <>
      <div className="overlay-chart" ref={ref}>
        <div className="overlay-chart-stack">
          <Plot
            data={data}
            layout={layout}
            height={Math.max(leastChartHeight, Math.floor(room))}
            description={`Force in body weights over time from ${alignmentWords[overlay.alignedAt]}, ${title}: ${sideWords(overlay.first, involved)} over ${sideWords(overlay.second, involved)}.`}
            onTimeRange={setZoom}
          />
        </div>
      </div>
      <p className="legend">
        {[overlay.first, overlay.second].map((side) => {
          const role = limbRole(side.side, involved);
          return (
            <span key={side.side} className={`legend-item limb-${role}`}>
              <span className={`legend-line legend-${role}`} aria-hidden="true" />
              {sideWords(side, involved)}
            </span>
          );
        })}
        <span className="muted">band ± 1 SD</span>
        {zoom !== undefined && (
          <Button variant="default" size="compact-xs" onClick={() => setZoom(undefined)}>
            Whole stretch
          </Button>
        )}
      </p>
    </>
  );
}

function sideWords(side: SideCurves, involved: InvolvedSide | undefined): string {
  const count = side.curves.length;
  return `${limbWords(side.side, involved)}, ${count} ${count === 1 ? "trial" : "trials"}`;
}

interface DrawableTest extends Pick<OverlayChoice, "test" | "legs"> {
  readonly key: string;
  readonly words: string;
}

/** The tests of the session that have a trial, in the order of the session. */
function drawableTests(session: SessionResult): readonly DrawableTest[] {
  const found = new Map<string, DrawableTest>();
  for (const { test, limb, status } of session.trials) {
    if (test === undefined || limb === undefined || status === "refused") continue;
    const legs = legsOf(limb);
    const key = `${test} ${legs}`;
    if (!found.has(key)) found.set(key, { key, test, legs, words: testWords(test, legs) });
  }
  return [...found.values()];
}

import { Button, NativeSelect, SegmentedControl } from "@mantine/core";
import { useElementSize } from "@mantine/hooks";
import { useMemo, useState } from "react";
import type { InvolvedSide, Side } from "../../core/ground/limb.ts";
import { testFacts } from "../../core/ground/test-kind.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { groupName, type TrialGroup, trialGroups } from "../../core/sheet/sheet-trials.ts";
import { type Alignment, alignmentsOf, type CurveOverlay, type SideCurves } from "../../core/sides/curves.ts";
import { useChartColours } from "../charts/chart-colours.ts";
import { Plot, type TimeRange } from "../charts/plot.tsx";
import { bearerRole, bearerWords } from "../shell/limb-role.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { alignmentWords, overlayFigure, overlayRange } from "./overlay-figure.ts";
import { type OverlayChoice, useOverlay } from "./use-overlay.ts";

const prose = words.screens.sides;
const counts = words.screens.counts;

const leastChartHeight = 330;

/** Both sides' curves of one test over each other. */
export function OverlayPanel({ session }: { readonly session: SessionResult }) {
  const { involved } = session.description;
  const tests = useMemo(() => drawableTests(session), [session]);
  const [testKey, setTestKey] = useState("");
  const [wantedAlignment, setAlignment] = useState<Alignment>();
  const [wantedLead, setLead] = useState<Side>();
  const shown = tests.find((each) => each.key === testKey) ?? tests.find((each) => each.legs === "single") ?? tests[0];
  const possible = shown === undefined ? [] : alignmentsOf(shown.test);
  const alignedAt = possible.find((each) => each === wantedAlignment) ?? possible[0];
  const leadingLeg = shown?.leads.find((each) => each === wantedLead);
  const choice = useMemo<OverlayChoice | undefined>(() => {
    if (shown === undefined || alignedAt === undefined) return undefined;
    const { test, legs, dropHeightMetres } = shown;
    return {
      test,
      legs,
      alignedAt,
      ...(dropHeightMetres === undefined ? {} : { dropHeightMetres }),
      ...(leadingLeg === undefined ? {} : { leadingLeg }),
    };
  }, [shown, alignedAt, leadingLeg]);
  const reply = useOverlay(session, choice);
  return (
    <section className="panel panel-padded overlay-panel" aria-labelledby="overlay-title">
      <div className="overlay-head">
        <div>
          <h2 id="overlay-title" className="panel-title">
            {reply?.overlay?.first.plate === undefined ? prose.curvesOfBothSides : prose.curvesOfBothPlates}
          </h2>
          {alignedAt !== undefined && <p className="muted">{prose.alignedAtEvent(alignmentWords[alignedAt])}</p>}
        </div>
        <div className="overlay-tools">
          {tests.length > 1 && (
            <NativeSelect
              aria-label={prose.testDrawn}
              className="fitted-select"
              size="xs"
              value={shown?.key ?? ""}
              onChange={(event) => setTestKey(event.currentTarget.value)}
              data={tests.map(({ key, words }) => ({ value: key, label: words }))}
            />
          )}
          {possible.length > 1 && (
            <SegmentedControl
              aria-label={prose.alignedAt}
              size="xs"
              value={alignedAt ?? ""}
              onChange={(value) => setAlignment(possible.find((each) => each === value))}
              data={possible.map((each) => ({ value: each, label: prose.atEvent(alignmentWords[each]) }))}
            />
          )}
          {shown !== undefined && shown.leads.length > 1 && (
            <SegmentedControl
              aria-label={prose.legLedOff}
              size="xs"
              value={leadingLeg ?? ""}
              onChange={(value) => setLead(shown.leads.find((each) => each === value))}
              data={[
                { value: "", label: prose.eitherLed },
                ...shown.leads.map((each) => ({ value: each, label: prose.legLed(each) })),
              ]}
            />
          )}
        </div>
      </div>
      {reply?.overlay === undefined ? (
        <p className="overlay-empty muted">
          {reply === undefined && choice !== undefined ? prose.drawing : prose.nothingToDraw}
        </p>
      ) : (
        <OverlayChart
          key={`${shown?.key} ${reply.overlay.alignedAt}`}
          overlay={reply.overlay}
          involved={involved}
          title={shown?.words ?? ""}
          curveNoun={shown !== undefined && testFacts(shown.test).flights === "many" ? "hop" : "trial"}
        />
      )}
    </section>
  );
}

interface OverlayChartProps {
  readonly overlay: CurveOverlay;
  readonly involved: InvolvedSide | undefined;
  readonly title: string;
  /** What one curve is. */
  readonly curveNoun: "trial" | "hop";
}

function OverlayChart({ overlay, involved, title, curveNoun }: OverlayChartProps) {
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
            description={prose.curvesOverTime(
              alignmentWords[overlay.alignedAt],
              title,
              sideWords(overlay.first, involved, curveNoun),
              sideWords(overlay.second, involved, curveNoun),
            )}
            onTimeRange={setZoom}
          />
        </div>
      </div>
      <p className="legend">
        {[overlay.first, overlay.second].map((side) => {
          const role = bearerRole(side, involved);
          return (
            <span key={role} className={`legend-item limb-${role}`}>
              <span className={`legend-line legend-${role}`} aria-hidden="true" />
              {sideWords(side, involved, curveNoun)}
            </span>
          );
        })}
        <span className="muted">{prose.bandOfOneDeviation}</span>
        {zoom !== undefined && (
          <Button variant="default" size="compact-xs" onClick={() => setZoom(undefined)}>
            {prose.wholeStretch}
          </Button>
        )}
      </p>
    </>
  );
}

function sideWords(side: SideCurves, involved: InvolvedSide | undefined, curveNoun: "trial" | "hop"): string {
  return `${bearerWords(side, involved)}, ${(curveNoun === "hop" ? counts.hops : counts.trials)(side.curves.length)}`;
}

interface DrawableTest extends Omit<TrialGroup, "trials"> {
  readonly key: string;
  readonly words: string;
  /** The legs that led off the box in the trials of the group, where both did. */
  readonly leads: readonly Side[];
}

/** The tests of the session that have a trial, two legs before one, each box on its own. */
function drawableTests(session: SessionResult): readonly DrawableTest[] {
  return trialGroups(session.trials.filter((trial) => trial.status !== "refused")).map(({ trials, ...group }) => {
    const words = sentenceCase(groupName(group));
    const leads = (["left", "right"] as const).filter((leg) => trials.some((trial) => trial.leadingLeg === leg));
    return { ...group, key: words, words, leads: leads.length > 1 ? leads : [] };
  });
}

import type { Data, Layout, Shape } from "plotly.js";
import { useEffect, useMemo, useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { RecordingOutline } from "../../electron/boundary/recording-replies.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { axis, baseLayout } from "../charts/axis-layout.ts";
import { type ChartColours, limbLine, useChartColours } from "../charts/chart-colours.ts";
import type { LimbRole } from "../charts/limb-role.ts";
import { Plot } from "../charts/plot.tsx";
import { bearerRole, bearerWords, plateBearer } from "../shell/limb-role.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;

interface RecordingChartProps {
  readonly session: SessionResult;
  readonly view: RecordingView;
}

const height = 260;

/** The force of the whole file as it was understood, a curve a plate, with its trials as bands. */
export function RecordingChart({ session, view }: RecordingChartProps) {
  const outline = useOutline(session.folder, view);
  const colours = useChartColours();
  const roles = useMemo(() => plateRoles(session, view.file), [session, view.file]);
  const figure = useMemo(
    () => (outline === undefined ? undefined : outlineFigure(outline, roles, colours)),
    [outline, roles, colours],
  );
  if (outline === "nothing") {
    return <p className="muted recording-chart-empty">{prose.nothingAsForce}</p>;
  }
  if (outline === undefined || figure === undefined) return <div style={{ height }} />;
  return (
    <figure className="recording-chart">
      <Plot {...figure} height={height} description={prose.forceOfRecording(view.file)} />
      <figcaption className="muted">
        {outline.plates.map(({ name, limb }, index) => {
          const { role, words } = roles[index] ?? inkOf(index);
          const form = limbLine(limb === "both" ? "total" : role, colours);
          return (
            <span key={`${name} ${limb}`} className="recording-chart-plate">
              <svg width="22" height="8" aria-hidden="true">
                <line
                  x1="0"
                  y1="4"
                  x2="22"
                  y2="4"
                  stroke={form.color}
                  strokeWidth="2"
                  strokeDasharray={form.dash === "dash" ? "6 4" : undefined}
                />
              </svg>
              {name}: {limb === "both" ? "total" : words}
            </span>
          );
        })}
      </figcaption>
    </figure>
  );
}

/** Fetched again whenever what was understood of the file changes; the former curve stays until then. */
function useOutline(folder: string, view: RecordingView): RecordingOutline | "nothing" | undefined {
  const { host, report } = useWorkspace();
  const [outline, setOutline] = useState<{
    readonly file: string;
    readonly outline: RecordingOutline | "nothing";
  }>();
  useEffect(() => {
    let wanted = true;
    host.call("recordings.outline", { folder, file: view.file }).then((reply) => {
      if (wanted) setOutline({ file: view.file, outline: reply.outline ?? "nothing" });
    }, report);
    return () => {
      wanted = false;
    };
  }, [host, report, folder, view]);
  return outline?.file === view.file ? outline.outline : undefined;
}

interface PlateRole {
  readonly role: LimbRole;
  readonly words: string;
}

/** How each plate of a file is drawn: as the limb that stood on it in every trial, else as a plate. */
function plateRoles({ trials, description }: SessionResult, file: string): readonly PlateRole[] {
  const ofFile = trials.filter((trial) => trial.file === file && trial.plates.length > 0);
  const [first, ...others] = ofFile;
  if (first === undefined) return [];
  return first.plates.map((_, index) => {
    const bearer = plateBearer(first, index);
    const alike = others.every((trial) => words.limbs.bearer(plateBearer(trial, index)) === words.limbs.bearer(bearer));
    const { involved } = description;
    return alike ? { role: bearerRole(bearer, involved), words: bearerWords(bearer, involved) } : inkOf(index);
  });
}

function inkOf(index: number): PlateRole {
  const bearer = { plate: index + 1 };
  return { role: bearerRole(bearer, undefined), words: words.limbs.bearer(bearer) };
}

function outlineFigure(
  outline: RecordingOutline | "nothing",
  roles: readonly PlateRole[],
  colours: ChartColours,
): { readonly data: Partial<Data>[]; readonly layout: Partial<Layout> } | undefined {
  if (outline === "nothing") return undefined;
  const data = outline.plates.map(({ limb, seconds, force }, index): Partial<Data> => {
    const { color, dash } = limbLine(limb === "both" ? "total" : (roles[index] ?? inkOf(index)).role, colours);
    return {
      type: "scatter",
      mode: "lines",
      x: [...seconds],
      y: [...force],
      line: { color, dash, width: 1.4, simplify: false },
    };
  });
  const bands = outline.trials.map(
    ({ from, to }): Partial<Shape> => ({
      type: "rect",
      xref: "x",
      yref: "paper",
      x0: from,
      x1: to,
      y0: 0,
      y1: 1,
      layer: "below",
      fillcolor: colours.line,
      opacity: 0.35,
      line: { width: 0 },
    }),
  );
  const layout: Partial<Layout> = {
    ...baseLayout(colours),
    xaxis: { ...axis(prose.timeS, colours), fixedrange: false, range: [0, outline.durationSeconds], showgrid: false },
    yaxis: { ...axis(prose.verticalForceN, colours), rangemode: "tozero" },
    shapes: outline.trials.length > 1 ? bands : [],
  };
  return { data, layout };
}

import type { TrialPhase } from "../../core/analysis.ts";
import { chartMargins } from "../charts/axis-layout.ts";
import type { TimeScale } from "../charts/time-scale.ts";
import { holdsItsWords, placeLabels, type RibbonLabel, type RibbonPiece } from "./ribbon-labels.ts";

const ribbonPixels = 36;
const lanePixels = 17;
/** Where more rows would be needed, the words stand in one line instead. */
const mostLanes = 2;

/** The phases under the time axis, with names and durations. */
export function PhaseRibbon({ phases, scale }: { readonly phases: readonly TrialPhase[]; readonly scale: TimeScale }) {
  const from = chartMargins.left;
  const to = chartMargins.left + scale.width;
  const pieces = phases.flatMap((phase) => ribbonPiece(phase, scale, from, to));
  const labels = placeLabels(pieces, from, to);
  const lanes = labels.reduce((most, label) => Math.max(most, label.lane + 1), 0);
  return (
    <div className="phase-ribbon" style={{ height: ribbonPixels + Math.min(lanes, mostLanes) * lanePixels + 2 }}>
      <ol aria-label="Phases">
        {pieces.map((piece, index) => (
          <li
            key={piece.name}
            className={index % 2 === 0 ? "phase" : "phase phase-second"}
            style={{ left: piece.left, width: piece.width, height: ribbonPixels }}
          >
            <span className={holdsItsWords(piece) ? undefined : "visually-hidden"}>
              {piece.name} <span className="phase-duration">{piece.duration}</span>
            </span>
          </li>
        ))}
      </ol>
      {lanes > mostLanes ? (
        <p className="phase-words" style={{ top: ribbonPixels, left: from, width: scale.width }} aria-hidden="true">
          {labels.map((label) => label.text).join(" · ")}
        </p>
      ) : (
        labels.map((label) => <PhaseLabel key={label.text} label={label} />)
      )}
    </div>
  );
}

function PhaseLabel({ label }: { readonly label: RibbonLabel }) {
  const top = ribbonPixels + label.lane * lanePixels;
  return (
    <span aria-hidden="true">
      <span className="phase-tick" style={{ left: label.at, top: ribbonPixels, height: top - ribbonPixels + 12 }} />
      <span className="phase-label" style={{ left: label.left + 3, top: top + 2 }}>
        {label.text}
      </span>
    </span>
  );
}

function ribbonPiece(phase: TrialPhase, scale: TimeScale, from: number, to: number): readonly RibbonPiece[] {
  const left = Math.max(from, scale.toPixel(phase.startSeconds));
  const right = Math.min(to, scale.toPixel(phase.endSeconds));
  if (right - left < 1) return [];
  return [
    {
      name: phase.name,
      duration: durationWords(phase.endSeconds - phase.startSeconds),
      left,
      width: right - left,
    },
  ];
}

/** Milliseconds below a second, seconds above. */
function durationWords(seconds: number): string {
  return seconds < 1 ? `${Math.round(seconds * 1000)} ms` : `${seconds.toFixed(2)} s`;
}

import type { TrialPhase } from "../../core/session/trace-trial.ts";
import { chartMargins } from "../charts/axis-layout.ts";
import type { TimeScale } from "../charts/time-scale.ts";
import { words } from "../words/words.ts";
import { holdsItsWords, placeLabels, type RibbonLabel, type RibbonPiece, textPixels } from "./ribbon-labels.ts";

const prose = words.screens.traceTables;

const ribbonPixels = 36;
const lanePixels = 17;
/** Where more rows would be needed, the words stand in one line instead. */
const mostLanes = 2;

/** The phases under the time axis, with names and durations. */
export function PhaseRibbon({ phases, scale }: { readonly phases: readonly TrialPhase[]; readonly scale: TimeScale }) {
  const from = chartMargins.left;
  const to = chartMargins.left + scale.width;
  const pieces = ribbonPieces(phases, scale, from, to);
  // the contacts and flights of a bout of hops are told by the table of hops; words for each would be a thicket
  const labels = phases.some((phase) => phase.name === "contact") ? [] : placeLabels(pieces, from, to);
  const lanes = labels.reduce((most, label) => Math.max(most, label.lane + 1), 0);
  return (
    <div className="phase-ribbon" style={{ height: ribbonPixels + Math.min(lanes, mostLanes) * lanePixels + 2 }}>
      <ol aria-label={prose.phases}>
        {pieces.map((piece, index) => (
          <li
            key={`${piece.name} ${piece.duration} ${piece.left}`}
            className={index % 2 === 0 ? "phase" : "phase phase-second"}
            style={{ left: piece.left, width: piece.width, height: ribbonPixels }}
          >
            <PieceWords piece={piece} />
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

/** Name and duration, one above the other; of a narrow contact its number alone; read out in any case. */
function PieceWords({ piece }: { readonly piece: RibbonPiece }) {
  const whole = holdsItsWords(piece);
  return (
    <>
      <span className={whole ? undefined : "visually-hidden"}>
        {piece.name} <span className="phase-duration">{piece.duration}</span>
      </span>
      {!whole && piece.number !== undefined && textPixels(piece.number) <= piece.width && (
        <span aria-hidden="true">{piece.number}</span>
      )}
    </>
  );
}

/** The phases that are in view. Contacts of repeated hops carry their number. */
function ribbonPieces(
  phases: readonly TrialPhase[],
  scale: TimeScale,
  from: number,
  to: number,
): readonly RibbonPiece[] {
  let contacts = 0;
  return phases.flatMap((phase) => {
    if (phase.name === "contact") contacts += 1;
    const number = String(contacts);
    const left = Math.max(from, scale.toPixel(phase.startSeconds));
    const right = Math.min(to, scale.toPixel(phase.endSeconds));
    if (right - left < 1) return [];
    const duration = durationWords(phase.endSeconds - phase.startSeconds);
    const words = phase.name === "contact" ? { name: prose.contactNumber(number), number } : { name: phase.name };
    return [{ ...words, duration, left, width: right - left }];
  });
}

/** Milliseconds below a second, seconds above. */
function durationWords(seconds: number): string {
  return seconds < 1 ? prose.milliseconds(Math.round(seconds * 1000)) : prose.secondsOf(seconds.toFixed(2));
}

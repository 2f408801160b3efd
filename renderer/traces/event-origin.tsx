import type { TrialEvent } from "../../core/events/event.ts";
import { formatValue } from "../../core/ground/format-number.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traceTables;

interface EventOriginProps {
  readonly event: TrialEvent;
  readonly label: string;
  readonly onReset: () => void;
}

/** Detected, with its uncertainty; or moved by hand, with the way back. */
export function EventOrigin({ event, label, onReset }: EventOriginProps) {
  if (event.from === "detected") return <>{prose.detectedWithin(uncertaintyWords(event))}</>;
  return (
    <>
      {prose.movedByHand}{" "}
      <button type="button" className="text-button" aria-label={prose.resetToDetected(label)} onClick={onReset}>
        {prose.reset}
      </button>
    </>
  );
}

function uncertaintyWords(event: TrialEvent): string {
  if (event.uncertainty === undefined) return "";
  const milliseconds = event.uncertainty * 1000;
  return prose.withinMilliseconds(formatValue(milliseconds, milliseconds, "1").uncertainty);
}

import type { TrialEvent } from "../../core/events/event.ts";
import { formatValue } from "../../core/ground/format-number.ts";

interface EventOriginProps {
  readonly event: TrialEvent;
  readonly label: string;
  readonly onReset: () => void;
}

/** Detected, with its uncertainty; or moved by hand, with the way back. */
export function EventOrigin({ event, label, onReset }: EventOriginProps) {
  if (event.from === "detected") return <>detected{uncertaintyWords(event)}</>;
  return (
    <>
      moved by hand{" "}
      <button type="button" className="text-button" aria-label={`Reset ${label} to detected`} onClick={onReset}>
        reset
      </button>
    </>
  );
}

function uncertaintyWords(event: TrialEvent): string {
  if (event.uncertainty === undefined) return "";
  const milliseconds = event.uncertainty * 1000;
  return ` ± ${formatValue(milliseconds, milliseconds, "1").uncertainty} ms`;
}

import type { Status } from "../../core/ground/status.ts";
import { statusMarkBox, statusMarkStroke, statusMarks } from "../../core/sheet/status-mark.ts";
import { words } from "../words/words.ts";

interface StatusWordProps {
  readonly status: Status;
  /** The word with everything that must stand beside it; the bare word where absent. */
  readonly words?: string;
}

/** A status: its word behind a drawn mark of its own shape. */
export function StatusWord({ status, words: whole }: StatusWordProps) {
  return (
    <span className="status">
      <svg className="status-mark" viewBox={`0 0 ${statusMarkBox} ${statusMarkBox}`} aria-hidden="true">
        <path
          d={statusMarks[status]}
          fill="none"
          stroke="currentcolor"
          strokeWidth={statusMarkStroke}
          strokeLinecap="round"
          strokeLinejoin="round"
        />
      </svg>
      <span>{whole ?? words.statuses.label(status)}</span>
    </span>
  );
}

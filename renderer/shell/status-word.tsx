import type { Status } from "../../core/criteria/criterion.ts";
import { statusLabel } from "../../core/criteria/status.ts";
import { statusMarkBox, statusMarkStroke, statusMarks } from "../../core/sheet/status-mark.ts";

interface StatusWordProps {
  readonly status: Status;
  /** The word with everything that must stand beside it; the bare word where absent. */
  readonly words?: string;
}

/** A status: its word behind a drawn mark of its own shape. */
export function StatusWord({ status, words }: StatusWordProps) {
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
      <span>{words ?? statusLabel(status)}</span>
    </span>
  );
}

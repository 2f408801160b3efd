import { Button } from "@mantine/core";
import { useRef, useState } from "react";
import { isHeld } from "../../core/result/held-trial.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { ExcludeForm } from "./exclude-form.tsx";
import type { SeenMark } from "./use-seen-mark.ts";

interface TrialActionsProps {
  readonly folder: string;
  readonly trial: TrialResult;
  readonly onStep: (by: -1 | 1) => void;
  readonly seenMark: SeenMark;
}

/** Going on to the next trial, marking this one as seen, excluding it with a reason. */
export function TrialActions({ folder, trial, onStep, seenMark }: TrialActionsProps) {
  const { apply } = useWorkspace();
  const [excluding, setExcluding] = useState(false);
  const excludeButton = useRef<HTMLButtonElement>(null);
  const stopExcluding = () => {
    setExcluding(false);
    excludeButton.current?.focus();
  };
  const place = { folder, file: trial.file, trial: trial.trial };
  return (
    <div className="trial-actions">
      <Button
        variant="default"
        size="compact-xs"
        title="Alt+↑ or ←"
        aria-keyshortcuts="Alt+ArrowUp"
        onClick={() => onStep(-1)}
      >
        Previous
      </Button>
      <Button
        variant="default"
        size="compact-xs"
        title="Alt+↓ or →"
        aria-keyshortcuts="Alt+ArrowDown"
        onClick={() => onStep(1)}
      >
        Next
      </Button>
      <Button
        variant={trial.seen ? "default" : "filled"}
        size="compact-xs"
        title="Ctrl+Enter (Command+Enter) marks as seen and goes on"
        aria-keyshortcuts="Control+Enter Meta+Enter"
        onKeyDown={(press) => {
          // A key that is held would mark and unmark in turns.
          if (press.repeat && (press.key === "Enter" || press.key === " ")) press.preventDefault();
        }}
        onClick={() => {
          if (trial.seen) void apply("trials.change", { ...place, change: { seen: false } });
          else seenMark.mark();
        }}
      >
        {trial.seen ? "Not seen yet" : "Mark as seen"}
      </Button>
      {(isHeld(trial) || trial.kept) && (
        <Button
          variant="default"
          size="compact-xs"
          onClick={() => void apply("trials.change", { ...place, change: { kept: isHeld(trial) } })}
        >
          {isHeld(trial) ? "Keep in means" : "Hold again"}
        </Button>
      )}
      {trial.excluded !== undefined ? (
        <Button
          variant="default"
          size="compact-xs"
          onClick={() => void apply("trials.change", { ...place, change: { excluded: null } })}
        >
          Include again
        </Button>
      ) : (
        <Button
          ref={excludeButton}
          variant="default"
          size="compact-xs"
          aria-expanded={excluding}
          onClick={() => setExcluding(!excluding)}
        >
          Exclude…
        </Button>
      )}
      <div className="seen-note" aria-live="polite">
        {seenMark.note !== "" && <p className="caution finding">{seenMark.note}</p>}
      </div>
      {excluding && trial.excluded === undefined && (
        <ExcludeForm
          onCancel={stopExcluding}
          onExclude={(reason) => {
            stopExcluding();
            void apply("trials.change", { ...place, change: { excluded: { reason } } });
          }}
        />
      )}
    </div>
  );
}

import { Button } from "@mantine/core";
import { useRef, useState } from "react";
import { isHeld } from "../../core/result/held-trial.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { ExcludeForm } from "./exclude-form.tsx";
import type { SeenMark } from "./use-seen-mark.ts";

const prose = words.screens.traces;

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
        title={prose.previousKeys}
        aria-keyshortcuts="Alt+ArrowUp"
        onClick={() => onStep(-1)}
      >
        {prose.previous}
      </Button>
      <Button
        variant="default"
        size="compact-xs"
        title={prose.nextKeys}
        aria-keyshortcuts="Alt+ArrowDown"
        onClick={() => onStep(1)}
      >
        {prose.next}
      </Button>
      <Button
        variant={trial.seen ? "default" : "filled"}
        size="compact-xs"
        title={prose.seenKeys}
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
        {trial.seen ? prose.notSeenYet : prose.markAsSeen}
      </Button>
      {(isHeld(trial) || trial.kept) && (
        <Button
          variant="default"
          size="compact-xs"
          onClick={() => void apply("trials.change", { ...place, change: { kept: isHeld(trial) } })}
        >
          {isHeld(trial) ? prose.keepInMeans : prose.holdAgain}
        </Button>
      )}
      {trial.excluded !== undefined ? (
        <Button
          variant="default"
          size="compact-xs"
          onClick={() => void apply("trials.change", { ...place, change: { excluded: null } })}
        >
          {prose.includeAgain}
        </Button>
      ) : (
        <Button
          ref={excludeButton}
          variant="default"
          size="compact-xs"
          aria-expanded={excluding}
          onClick={() => setExcluding(!excluding)}
        >
          {prose.excludeAsked}
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

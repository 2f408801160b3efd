import { useCallback, useEffect, useState } from "react";
import type { OfferedStep } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "./workspace.tsx";

export type StepDirection = "undo" | "redo";

/** A step that reaches beyond the session shown, while the person is asked about it. */
export interface AskedStep {
  readonly direction: StepDirection;
  readonly words: string;
  readonly beyond: string;
  readonly within: OfferedStep["within"];
  /** Takes the step itself, or the newest of the session alone. */
  readonly take: (step: "it" | "within") => void;
  readonly leave: () => void;
}

/** Taking steps back and doing them again: those of the session shown at once, what reaches beyond it after a question. */
export interface Steps {
  readonly take: (direction: StepDirection) => void;
  readonly asked: AskedStep | undefined;
}

export function useSteps(): Steps {
  const { workspace, busy, apply } = useWorkspace();
  const [asked, setAsked] = useState<AskedStep>();
  /** Pressed and not yet begun: each takes what is offered once everything before it was answered. */
  const [pressed, setPressed] = useState<readonly StepDirection[]>([]);
  const take = useCallback((direction: StepDirection) => setPressed((before) => [...before, direction]), []);
  useEffect(() => {
    const [direction, ...later] = pressed;
    if (direction === undefined || busy || workspace === undefined) return;
    const { folder } = workspace;
    const offered = direction === "undo" ? workspace.undoStep : workspace.redoStep;
    const send = (step: number, agreed: boolean) => void apply(`workspace.${direction}`, { folder, step, agreed });
    if (offered === undefined || asked !== undefined) return setPressed([]);
    const { step, beyond, within } = offered;
    setPressed(later);
    if (beyond === undefined) return send(step, false);
    setAsked({
      direction,
      words: workspace[direction],
      beyond,
      within,
      take: (which) => {
        setAsked(undefined);
        if (which === "it") send(step, true);
        else if (within !== undefined) send(within.step, false);
      },
      leave: () => setAsked(undefined),
    });
  }, [pressed, busy, workspace, asked, apply]);
  return { take, asked };
}

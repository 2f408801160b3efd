import { useEffect } from "react";
import { dialogIsOpen } from "./dialog-is-open.ts";
import type { StepDirection } from "./use-steps.ts";

/** Ctrl+Z (Command+Z) undoes and with Shift redoes, except while text is being written or a question stands open. */
export function useUndoKeys(take: (direction: StepDirection) => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || writesText(event.target) || dialogIsOpen()) return;
      const key = event.key.toLowerCase();
      const wanted = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : undefined;
      if (wanted === undefined) return;
      event.preventDefault();
      take(wanted);
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [take]);
}

/** True for a place where the keys belong to the text being written. */
function writesText(target: EventTarget | null): boolean {
  const written = "input:not([type=checkbox], [type=radio]), textarea, select";
  return target instanceof HTMLElement && target.closest(written) !== null;
}

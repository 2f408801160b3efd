import { useEffect } from "react";
import { writesText } from "../shell/use-undo-keys.ts";

/** Alt+Up and Alt+Down go through the trials; Ctrl+Enter marks the trial as seen and goes on. */
export function useTraceKeys(step: (by: -1 | 1) => void, markSeen: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (writesText(event.target)) return;
      const control = event.ctrlKey || event.metaKey;
      if (event.altKey && !control && event.key === "ArrowDown") step(1);
      else if (event.altKey && !control && event.key === "ArrowUp") step(-1);
      else if (control && !event.altKey && event.key === "Enter") markSeen();
      else return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [step, markSeen]);
}

import { useEffect } from "react";
import { dialogIsOpen } from "../shell/dialog-is-open.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traces;

/** The keys that go through the trials, as the screen says them. */
export const traceKeysWords = prose.keys;

const directions: Readonly<Record<string, -1 | 1>> = { ArrowUp: -1, ArrowLeft: -1, ArrowDown: 1, ArrowRight: 1 };

/** Forms in which a person wrote something; what was written there belongs to the trial that is about to be left. */
const writtenForms = new WeakSet<HTMLFormElement>();

/**
 * Alt with an arrow goes through the trials; Ctrl+Enter or Command+Enter marks the trial as seen and goes on. Both hold
 * wherever the focus is, so they are taken before any field, handle or table sees them; only an open dialog keeps them,
 * and a list of choices keeps Alt with an arrow, which opens it.
 */
export function useTraceKeys(step: (by: -1 | 1) => void, markSeen: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const control = event.ctrlKey || event.metaKey;
      const by = event.altKey && !control ? directions[event.key] : undefined;
      const marks = control && !event.altKey && event.key === "Enter";
      if ((by === undefined && !marks) || dialogIsOpen()) return;
      if (by !== undefined && event.target instanceof HTMLSelectElement) return;
      event.preventDefault();
      event.stopPropagation();
      if (by !== undefined) {
        leaveTrial();
        step(by);
      } else if (!event.repeat) {
        afterWhatWasWritten(event.target, () => {
          leaveTrial();
          markSeen();
        });
      }
    };
    const onInput = ({ target }: Event) => {
      const form = target instanceof HTMLElement ? target.closest("form") : null;
      if (form !== null) writtenForms.add(form);
    };
    window.addEventListener("keydown", onKey, true);
    window.addEventListener("input", onInput, true);
    return () => {
      window.removeEventListener("keydown", onKey, true);
      window.removeEventListener("input", onInput, true);
    };
  }, [step, markSeen]);
}

/** A time that was written or an event on its way is sent as if its field had been left. */
function leaveTrial(): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLElement && activeElement.closest(".trial-panel") !== null) activeElement.blur();
}

/** Sends a form in which something was written, then goes on; stays where it stays open because something is wrong. */
function afterWhatWasWritten(target: EventTarget | null, goOn: () => void): void {
  const form = target instanceof HTMLElement ? target.closest("form") : null;
  if (form === null || !writtenForms.has(form)) {
    goOn();
    return;
  }
  form.requestSubmit();
  // What the form answers is on the screen a turn later.
  setTimeout(() => {
    if (!form.isConnected) goOn();
  });
}

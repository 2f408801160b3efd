import { useCallback, useEffect, useRef, useState } from "react";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { type CurveOnScreen, curveOnScreen, leastCurvePixels, notSeenWords } from "./curve-on-screen.ts";
import { trialKey } from "./trial-groups.ts";

/** Marking the trial shown as seen. */
export interface SeenMark {
  /** Why it was not marked and what to do, one sentence; "" when nothing stands in the way. */
  readonly note: string;
  /** Marks it where its curve was on the screen; answers whether it is marked now. */
  readonly mark: () => boolean;
  /** To be called with the plot whenever the trial's curves have been drawn. */
  readonly onDrawn: (plot: HTMLElement) => void;
}

/** What became of the curve of one trial since it was chosen. */
interface Drawing {
  readonly trial: string;
  plot?: HTMLElement;
  wasSeen: boolean;
}

/**
 * A trial is marked as seen only after its curve stood on the screen, high enough to be looked at. What was really drawn
 * is measured when it is drawn, when the page moves and when the mark is asked for.
 */
export function useSeenMark(folder: string, trial: TrialResult | undefined): SeenMark {
  const { apply } = useWorkspace();
  const key = trial === undefined ? "" : trialKey(trial);
  const drawing = useRef<Drawing>({ trial: key, wasSeen: false });
  if (drawing.current.trial !== key) drawing.current = { trial: key, wasSeen: false };
  const [refused, setRefused] = useState({ trial: "", note: "" });

  const measure = useCallback((): CurveOnScreen | undefined => {
    const { plot } = drawing.current;
    if (plot?.isConnected !== true) return undefined;
    const curve = curveOnScreen(plot);
    if (curve.visiblePixels >= leastCurvePixels) {
      drawing.current.wasSeen = true;
      setRefused((before) => (before.note === "" ? before : { trial: "", note: "" }));
    }
    return curve;
  }, []);
  const onDrawn = useCallback(
    (plot: HTMLElement) => {
      drawing.current.plot = plot;
      measure();
    },
    [measure],
  );
  useEffect(() => {
    const events = ["scroll", "resize"] as const;
    for (const name of events) window.addEventListener(name, measure, { passive: true, capture: true });
    return () => {
      for (const name of events) window.removeEventListener(name, measure, { capture: true });
    };
  }, [measure]);

  const mark = useCallback(() => {
    if (trial === undefined) return false;
    if (trial.seen) return true;
    const curve = measure();
    if (!drawing.current.wasSeen) {
      drawing.current.plot?.scrollIntoView({ block: "nearest" });
      setRefused({ trial: key, note: notSeenWords(curve, trial.status !== "refused") });
      return false;
    }
    void apply("trials.change", { folder, file: trial.file, trial: trial.trial, change: { seen: true } });
    return true;
  }, [apply, folder, key, measure, trial]);
  return { note: refused.trial === key ? refused.note : "", mark, onDrawn };
}

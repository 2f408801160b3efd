import { useEffect, useState } from "react";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import { useWorkspace } from "../shell/workspace.tsx";

/**
 * The curves of a trial, fetched again whenever its result changes. While a changed trial is fetched the former curves
 * stay; another trial starts empty. A refused trial shows its force where its file holds any; where it holds none, its
 * findings say so already.
 */
export function useTrialTrace(folder: string, trial: TrialResult | undefined): TrialTrace | undefined {
  const { host, report } = useWorkspace();
  const [trace, setTrace] = useState<TrialTrace>();
  useEffect(() => {
    if (trial === undefined) return;
    let wanted = true;
    host.call("trials.trace", { folder, file: trial.file, trial: trial.trial }).then(
      (reply) => {
        if (wanted) setTrace(reply);
      },
      (reason: unknown) => {
        if (wanted && trial.status !== "refused") report(reason);
      },
    );
    return () => {
      wanted = false;
    };
  }, [host, report, folder, trial]);
  const fits = trace !== undefined && trace.trial.file === trial?.file && trace.trial.trial === trial.trial;
  return fits ? trace : undefined;
}

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from "react";
import type { Host, HostApi, HostRequestName, Workspace } from "../../electron/host-api.ts";
import { sentenceOf } from "../host.ts";

/** The requests that answer with the whole workspace. */
type WorkspaceRequestName = {
  [Name in HostRequestName]: HostApi[Name]["reply"] extends Workspace ? Name : never;
}[HostRequestName];

export interface WorkspaceState {
  readonly host: Host;
  /** Absent until the host has answered for the first time. */
  readonly workspace: Workspace | undefined;
  /** True while a change is on its way. */
  readonly busy: boolean;
  /** What went wrong last, as one sentence; "" when nothing did. */
  readonly problem: string;
  readonly report: (reason: unknown) => void;
  readonly dismiss: () => void;
  /**
   * Sends a change and draws what the host answers. A refused one is said, what the host holds is read again (another
   * page may have changed it), and the answer is false.
   */
  readonly apply: <Name extends WorkspaceRequestName>(
    name: Name,
    request: HostApi[Name]["request"],
  ) => Promise<boolean>;
}

const WorkspaceContext = createContext<WorkspaceState | undefined>(undefined);

/** The workspace of the nearest provider. */
export function useWorkspace(): WorkspaceState {
  const state = useContext(WorkspaceContext);
  if (state === undefined) throw new Error("A screen stands outside the workspace.");
  return state;
}

/** Holds the workspace as the host last told it. Changes go one after the other, so that replies never overtake. */
export function WorkspaceProvider({ host, children }: { readonly host: Host; readonly children: ReactNode }) {
  const [workspace, setWorkspace] = useState<Workspace>();
  const [pending, setPending] = useState(0);
  const [problem, setProblem] = useState("");
  const queue = useRef<Promise<unknown>>(Promise.resolve());

  const report = useCallback((reason: unknown) => setProblem(sentenceOf(reason)), []);
  const dismiss = useCallback(() => setProblem(""), []);
  const apply = useCallback<WorkspaceState["apply"]>(
    (name, request) => {
      setPending((count) => count + 1);
      const answer = queue.current
        .then(() => host.call(name, request))
        .then(
          (reply) => {
            setWorkspace(reply);
            return true;
          },
          async (reason: unknown) => {
            report(reason);
            if (name !== "workspace.read") await host.call("workspace.read", {}).then(setWorkspace, report);
            return false;
          },
        )
        .finally(() => setPending((count) => count - 1));
      queue.current = answer;
      return answer;
    },
    [host, report],
  );

  useEffect(() => {
    void apply("workspace.read", {});
  }, [apply]);

  const state = useMemo<WorkspaceState>(
    () => ({ host, workspace, busy: pending > 0, problem, report, dismiss, apply }),
    [host, workspace, pending, problem, report, dismiss, apply],
  );
  return <WorkspaceContext value={state}>{children}</WorkspaceContext>;
}

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from "react";
import type { Host, HostApi, HostRequestName } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { SettledField } from "../../electron/refusals/settled-fields.ts";
import { sentenceOf } from "./host.ts";
import { type Conflict, withStart } from "./started-from.ts";

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
  /** Fields that were changed elsewhere meanwhile, while the person is asked about them. */
  readonly conflict: Conflict | undefined;
  /**
   * Sends a change and draws what the host answers. A statement about the session shown goes with what the screen showed
   * when it was made, unless it says itself what it started from. Where the same fields were changed elsewhere the person
   * is asked, and the answer waits for them. A refused change is said, what the host holds is read again (another page
   * may have changed it), and the answer is false.
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
  const [conflict, setConflict] = useState<Conflict>();
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  /** Changes on their way. */
  const waiting = useRef(0);
  /** As the host last told it, ahead of what is drawn. */
  const latest = useRef<Workspace>(undefined);
  const show = useCallback((reply: Workspace) => {
    const { conflict: _asked, ...told } = reply;
    const isNews = told.restarted !== undefined && told.restarted !== latest.current?.restarted;
    latest.current = told;
    setWorkspace(told);
    if (told.restarted !== undefined && isNews) setProblem(told.restarted);
  }, []);

  const report = useCallback((reason: unknown) => setProblem(sentenceOf(reason)), []);
  const dismiss = useCallback(() => setProblem(""), []);
  const apply = useCallback<WorkspaceState["apply"]>(
    (name, request) => {
      // A look at how far something has come is no change: it must not take buttons away from under a hand each second.
      const isAwaited = name !== "workspace.read" || latest.current === undefined;
      if (isAwaited) setPending((count) => count + 1);
      // What is drawn now is what the person answers to; behind a change of their own it is what that one left.
      const drawn = waiting.current === 0 ? latest.current : undefined;
      waiting.current += 1;
      const sent = queue.current.then(() => withStart(request, drawn ?? latest.current));
      const answer = sent
        .then((started) => host.call(name, started))
        .then(
          (reply) => {
            show(reply);
            return reply.conflict ?? true;
          },
          async (reason: unknown) => {
            report(reason);
            if (name !== "workspace.read") await host.call("workspace.read", {}).then(show, report);
            return false;
          },
        )
        .finally(() => {
          waiting.current -= 1;
          if (isAwaited) setPending((count) => count - 1);
        });
      queue.current = answer;
      return Promise.all([answer, sent]).then(([outcome, started]) => {
        if (typeof outcome === "boolean") return outcome;
        return new Promise<boolean>((resolve) => {
          const choose = (settled: readonly SettledField[] | undefined) => {
            setConflict(undefined);
            if (settled === undefined) resolve(false);
            else
              resolve(
                apply(name, {
                  ...started,
                  settled: [...("settled" in started ? (started.settled ?? []) : []), ...settled],
                }),
              );
          };
          setConflict({ fields: outcome, choose });
        });
      });
    },
    [host, report, show],
  );

  useEffect(() => {
    void apply("workspace.read", {});
  }, [apply]);

  const state = useMemo<WorkspaceState>(
    () => ({ host, workspace, busy: pending > 0, problem, conflict, report, dismiss, apply }),
    [host, workspace, pending, problem, conflict, report, dismiss, apply],
  );
  return <WorkspaceContext value={state}>{children}</WorkspaceContext>;
}

import { useEffect, useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { CurveOverlay } from "../../core/sides/curves.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { useWorkspace } from "../shell/workspace.tsx";

/** Which trials are laid over each other. */
export type OverlayChoice = Omit<HostApi["sides.curves"]["request"], "folder">;

/** The curves of both sides, fetched again whenever the session's result changes; `undefined` while on their way. */
export function useOverlay(
  session: SessionResult,
  choice: OverlayChoice | undefined,
): { readonly overlay?: CurveOverlay } | undefined {
  const { host, report } = useWorkspace();
  const [reply, setReply] = useState<{ readonly overlay?: CurveOverlay }>();
  useEffect(() => {
    if (choice === undefined) return;
    let wanted = true;
    host.call("sides.curves", { folder: session.folder, ...choice }).then(
      (answer) => {
        if (wanted) setReply(answer);
      },
      (reason: unknown) => {
        if (wanted) report(reason);
      },
    );
    return () => {
      wanted = false;
    };
  }, [host, report, session, choice]);
  return reply;
}

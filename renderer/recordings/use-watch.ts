import { useCallback, useEffect, useRef, useState } from "react";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { WatchView } from "../../electron/boundary/watch-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { nextLookMilliseconds } from "./look-pace.ts";

type WatchRequestName = "watch.start" | "watch.stop" | "watch.expect";

export interface Watch {
  /** Absent until the host has answered for the first time. */
  readonly view: WatchView | undefined;
  /** Sends a change of the watch; a refused one is said. */
  readonly change: <Name extends WatchRequestName>(name: Name, request: HostApi[Name]["request"]) => Promise<void>;
}

/** The watch as the host holds it. While it is on it is looked at again and again, and the workspace follows it. */
export function useWatch(): Watch {
  const { host, apply, report } = useWorkspace();
  const [view, setView] = useState<WatchView>();
  const revision = useRef<number>(undefined);

  const show = useCallback(
    async (next: WatchView): Promise<void> => {
      const isNews = revision.current !== undefined && revision.current !== next.revision;
      revision.current = next.revision;
      setView(next);
      if (isNews) await apply("workspace.read", {});
    },
    [apply],
  );
  const change = useCallback<Watch["change"]>(
    (name, request) => host.call(name, request).then((reply) => show(reply as WatchView), report),
    [host, report, show],
  );

  useEffect(() => {
    host.call("watch.read", {}).then(show, report);
  }, [host, report, show]);

  const isOn = view !== undefined && view.state !== "off";
  useEffect(() => {
    if (!isOn) return;
    let ended = false;
    let timer: ReturnType<typeof setTimeout>;
    const look = async () => {
      const began = performance.now();
      try {
        const next = await host.call("watch.read", {});
        if (ended) return;
        await show(next);
      } catch (reason) {
        if (!ended) report(reason);
        return;
      }
      if (!ended) timer = setTimeout(look, nextLookMilliseconds(performance.now() - began));
    };
    timer = setTimeout(look, nextLookMilliseconds(0));
    return () => {
      ended = true;
      clearTimeout(timer);
    };
  }, [isOn, host, report, show]);

  return { view, change };
}

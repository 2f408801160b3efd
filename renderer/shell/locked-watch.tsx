import { useEffect, useState } from "react";
import type { WatchCounts, WatchView } from "../../electron/boundary/watch-view.ts";
import { useWorkspace } from "./workspace.tsx";

const lookMilliseconds = 1000;

/** While a folder is watched behind the lock: how many recordings came in, and no name of anything. */
export function LockedWatch() {
  const { host, report } = useWorkspace();
  const [view, setView] = useState<WatchView>();
  useEffect(() => {
    let ended = false;
    let timer: ReturnType<typeof setTimeout>;
    const look = () =>
      host.call("watch.read", {}).then(
        (next) => {
          if (ended) return;
          setView(next);
          if (next.state !== "off") timer = setTimeout(look, lookMilliseconds);
        },
        (reason: unknown) => {
          if (!ended) report(reason);
        },
      );
    void look();
    return () => {
      ended = true;
      clearTimeout(timer);
    };
  }, [host, report]);
  if (view?.counts === undefined) return null;
  return (
    <section aria-label="Watched folder">
      <p role="status">
        {view.state === "unreachable" ? "The watched folder cannot be reached. " : "A folder is being watched. "}
        {countWords(view.counts)}
      </p>
    </section>
  );
}

/** "3 recordings taken in. 2 wait until the register is unlocked." */
export function countWords({ taken, waiting, writing, leftAside }: WatchCounts): string {
  const parts = [
    taken === 1 ? "1 recording taken in." : `${taken} recordings taken in.`,
    waiting === 0 ? "None waits." : `${waiting} ${waiting === 1 ? "waits" : "wait"} until the register is unlocked.`,
    ...(writing === 0 ? [] : [`${writing} still being written.`]),
    ...(leftAside === 0 ? [] : [`${leftAside} left aside.`]),
  ];
  return parts.join(" ");
}

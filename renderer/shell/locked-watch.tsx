import { useEffect, useState } from "react";
import type { WatchCounts, WatchView } from "../../electron/boundary/watch-view.ts";
import { words } from "../words/words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.lock;

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
    <section aria-label={prose.watchedFolder}>
      <p role="status">
        {view.state === "unreachable" ? prose.watchedFolderNotReached : prose.folderIsWatched} {countWords(view.counts)}
      </p>
    </section>
  );
}

/** "3 recordings taken in. 2 wait until the register is unlocked." */
export function countWords({ taken, waiting, writing, leftAside }: WatchCounts): string {
  const parts = [
    taken === 1 ? prose.oneTakenIn : prose.takenIn(taken),
    waiting === 0 ? prose.noneWaits : prose.untilUnlocked(waiting, waiting === 1 ? prose.waits : prose.wait),
    ...(writing === 0 ? [] : [prose.stillBeingWritten(writing)]),
    ...(leftAside === 0 ? [] : [prose.leftAside(leftAside)]),
  ];
  return parts.join(" ");
}

import "./watch.css";
import { Button, TextInput } from "@mantine/core";
import { type ReactNode, useEffect, useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import type { Watch } from "./use-watch.ts";
import { WatchBoard } from "./watch-board.tsx";

interface WatchPanelProps {
  readonly watch: Watch;
  readonly workspace: Workspace;
  /** How recordings come in otherwise; it stands below the board while the watch is on. */
  readonly before: ReactNode;
}

/** Watching a folder during the session: off, one line that starts it; on, a board to read across the room. */
export function WatchPanel({ watch: { view, change }, workspace, before }: WatchPanelProps) {
  const { host, report } = useWorkspace();
  const [folder, setFolder] = useState("");
  const [hasDialog, setHasDialog] = useState(false);
  useEffect(() => {
    host.call("application.describe", {}).then((described) => setHasDialog(described.host === "window"), report);
  }, [host, report]);
  const choose = () => host.call("watch.choose", {}).then((chosen) => setFolder(chosen.folder ?? folder), report);
  if (view === undefined) return before;
  if (view.state !== "off") {
    return (
      <>
        <WatchBoard view={view} workspace={workspace} change={change} />
        {before}
      </>
    );
  }
  return (
    <>
      {before}
      <section className="panel panel-padded" aria-labelledby="watch-title">
        <form
          className="watch-start"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            void change("watch.start", { folder: folder.trim() });
          }}
        >
          <h2 id="watch-title" className="panel-title">
            Watch a folder during the session
          </h2>
          <p className="muted watch-explained">
            Each recording that the acquisition computer finishes there is taken in at once, and this screen says
            whether it counts and what is still missing. The folder itself is never written to.
          </p>
          <TextInput
            className="watch-folder"
            label="Folder, with its whole path"
            value={folder}
            onChange={(event) => setFolder(event.currentTarget.value)}
          />
          <div className="watch-buttons">
            {hasDialog && (
              <Button variant="default" onClick={() => void choose()}>
                Choose folder…
              </Button>
            )}
            <Button type="submit" variant="default" disabled={folder.trim() === ""}>
              Start watching
            </Button>
          </div>
        </form>
      </section>
    </>
  );
}

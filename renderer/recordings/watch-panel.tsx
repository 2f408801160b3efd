import "./watch.css";
import { Button, TextInput } from "@mantine/core";
import { type ReactNode, useEffect, useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import type { Watch } from "./use-watch.ts";
import { WatchBoard } from "./watch-board.tsx";

const prose = words.screens.watch;

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
            {prose.watchFolderDuringSession}
          </h2>
          <p className="muted watch-explained">{prose.whatWatchingDoes}</p>
          <TextInput
            className="watch-folder"
            label={prose.folderWithItsWholePath}
            value={folder}
            onChange={(event) => setFolder(event.currentTarget.value)}
          />
          <div className="watch-buttons">
            {hasDialog && (
              <Button variant="default" onClick={() => void choose()}>
                {prose.chooseFolder}
              </Button>
            )}
            <Button type="submit" variant="default" disabled={folder.trim() === ""}>
              {prose.startWatching}
            </Button>
          </div>
        </form>
      </section>
    </>
  );
}

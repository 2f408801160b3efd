import "./recordings.css";
import { Button } from "@mantine/core";
import { useState } from "react";
import type { Workspace } from "../../electron/host-api.ts";
import { IntakePanel } from "./intake-panel.tsx";
import { RecordingDetail } from "./recording-detail.tsx";
import { RecordingsTable } from "./recordings-table.tsx";
import { SessionStatements } from "./session-statements.tsx";
import { WatchPanel } from "./watch-panel.tsx";

interface RecordingsScreenProps {
  readonly workspace: Workspace;
  readonly onShowTraces: () => void;
}

/** Bringing recordings in, and what was understood of them. */
export function RecordingsScreen({ workspace, onShowTraces }: RecordingsScreenProps) {
  const { recordings, session, folder } = workspace;
  const [chosen, setChosen] = useState("");
  const asking = recordings.filter((view) => view.outcome === "asks").map((view) => view.file);
  const shown =
    recordings.find((view) => view.file === chosen) ??
    recordings.find((view) => view.outcome === "asks") ??
    recordings.find((view) => view.outcome === "refused") ??
    recordings[0];
  return (
    <>
      <h1 className="area-title">Recordings</h1>
      <WatchPanel before={<IntakePanel workspace={workspace} />} />
      {session !== undefined && <SessionStatements key={sessionKey(workspace)} session={session} />}
      {recordings.length > 0 && shown !== undefined && (
        <div className="recordings-columns">
          <section className="panel recordings-panel" aria-labelledby="files-title">
            <div className="recordings-head">
              <div>
                <h2 id="files-title" className="panel-title">
                  {folder === "" ? "Loose recordings" : folder}
                </h2>
                <p className="muted">{countWords(workspace)}</p>
              </div>
              <Button onClick={onShowTraces}>Look at the traces</Button>
            </div>
            <RecordingsTable recordings={recordings} selected={shown.file} onSelect={setChosen} />
          </section>
          <RecordingDetail folder={folder} view={shown} asking={asking} />
        </div>
      )}
    </>
  );
}

/** The form starts anew when another session is shown or what it shows was changed, also by undo. */
function sessionKey({ folder, session }: Workspace): string {
  const { files: _files, ...about } = session?.description ?? {};
  return `${folder} ${JSON.stringify(about)}`;
}

function countWords({ recordings }: Workspace): string {
  const count = (outcome: (typeof recordings)[number]["outcome"]) =>
    recordings.filter((view) => view.outcome === outcome).length;
  const words = [`${recordings.length} ${recordings.length === 1 ? "recording" : "recordings"}`];
  if (count("asks") > 0) words.push(`${count("asks")} asking for something`);
  if (count("refused") > 0) words.push(`${count("refused")} refused`);
  return words.join(", ");
}

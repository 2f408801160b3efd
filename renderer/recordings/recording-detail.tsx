import { Checkbox } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { suggestLeavingOut } from "../../core/session/leave-out.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { bySeverity, FindingsList } from "../shell/findings-list.tsx";
import { TakeAsRecognised } from "../shell/take-as-recognised.tsx";
import { TakeOutButton } from "../shell/take-out-button.tsx";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { isSameKind, statedAbout } from "./answers.ts";
import { FileText } from "./file-text.tsx";
import { ReadingForm } from "./reading-form.tsx";
import { formWords, outcomeWords } from "./reading-words.ts";
import { RecordingChart } from "./recording-chart.tsx";
import { RememberForm } from "./remember-form.tsx";

const prose = words.screens.recordingReading;

interface RecordingDetailProps {
  readonly session: SessionResult;
  readonly view: RecordingView;
  /** Every recording of the session. */
  readonly all: readonly RecordingView[];
  /** The files chosen in the table. */
  readonly chosen: ReadonlySet<string>;
}

/** One file as text beside the trace as understood, with every decision between the two. */
export function RecordingDetail({ session, view, all, chosen }: RecordingDetailProps) {
  const { apply } = useWorkspace();
  const { folder, description } = session;
  const [toAsking, setToAsking] = useState(false);
  const { file, reading } = view;
  const stated = statedAbout(description, file);
  const alike = all.filter((other) => other.file !== file && isSameKind(view, other));
  const along = alike.filter((other) => chosen.has(other.file));
  const asking = alike.filter((other) => other.outcome === "asks" && !chosen.has(other.file));
  const files = [file, ...along.map((each) => each.file), ...(toAsking ? asking.map((each) => each.file) : [])];
  return (
    <section className="panel panel-padded recording-detail" aria-labelledby="recording-title">
      <h2 id="recording-title" className="panel-title">
        {file}
      </h2>
      <p className="muted">
        {outcomeWords(view.outcome)} · {sizeWords(view.byteLength)}
        {reading !== undefined && ` · ${formWords(reading)}`}
      </p>
      <FindingsList findings={bySeverity(view.findings)} place={{ folder, file }} />
      <TakeAsRecognised folder={folder} file={file} said={view.findings} />
      {(view.outcome === "refused" || suggestLeavingOut(view.findings)) && (
        <div className="form-buttons">
          <TakeOutButton folder={folder} files={[file]} />
        </div>
      )}
      <div className="preview-columns">
        <FileText key={`${folder} ${file}`} folder={folder} file={file} reading={reading} />
        <RecordingChart session={session} view={view} />
      </div>
      {reading !== undefined && (
        <>
          {along.length > 0 && <p className="muted">{prose.answersHoldAlong(along.length)}</p>}
          {asking.length > 0 && (
            <Checkbox
              size="xs"
              label={prose.answerAlso(asking.length, asking.length === 1 ? prose.asks : prose.ask)}
              checked={toAsking}
              onChange={(event) => setToAsking(event.currentTarget.checked)}
            />
          )}
          <ReadingForm
            view={view}
            reading={reading}
            stated={stated}
            onAnswer={(answers) => void apply("recordings.answer", { folder, files, answers })}
          />
          <RememberForm
            key={reading.kind === "delimited" ? reading.layout : ""}
            folder={folder}
            file={file}
            reading={reading}
            stated={stated}
          />
        </>
      )}
    </section>
  );
}

function sizeWords(bytes: number): string {
  if (bytes < 1000) return prose.bytes(bytes);
  return bytes < 1_000_000
    ? prose.kilobytes(Math.round(bytes / 1000))
    : prose.megabytes((bytes / 1_000_000).toFixed(1));
}

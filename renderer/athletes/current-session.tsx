import { Button } from "@mantine/core";
import { useRef, useState } from "react";
import { askedAnswers } from "../../core/protocol/asked-answers.ts";
import { sessionProgress } from "../../core/protocol/session-progress.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { StoredRecord } from "../../electron/register/record-tables.ts";
import { CautionsPanel } from "../cautions/cautions-panel.tsx";
import { addedWords } from "../recordings/added-words.ts";
import { chosenFiles, type PickedFile } from "../recordings/dropped-files.ts";
import { type BatchFile, takeOne } from "../recordings/take-in.ts";
import { AddToProtocol } from "../shell/add-to-protocol.tsx";
import { AskedAnswers } from "../shell/asked-answers.tsx";
import { today } from "../shell/dates.ts";
import { dateWords } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { Stopping } from "./stopping.tsx";

const prose = words.screens.athleteRecord;

interface CurrentSessionProps {
  readonly session: SessionResult;
  readonly record: StoredRecord<"sessions">;
  readonly canWrite: boolean;
  readonly onShow: (area: "recordings" | "traces" | "sheet") => void;
}

/** The session shown: what is still missing, the gate, the cautions, and stopping it. */
export function CurrentSession({ session, record, canWrite, onShow }: CurrentSessionProps) {
  const progress = sessionProgress(session);
  const { date, milestone, tester } = record.content;
  const when = [date === undefined ? prose.withoutDate : dateWords(date), milestone].filter(Boolean).join(" · ");
  const isToday = date === today();
  return (
    <section className="panel panel-padded current-session" aria-labelledby="current-title">
      <h2 id="current-title" className="panel-title">
        {prose.sessionShown(when)}
      </h2>
      {progress === undefined ? (
        <p className="muted">{prose.noProtocol}</p>
      ) : (
        <div className="progress">
          <div>
            <h3 className="small-title">{prose.stillMissing}</h3>
            <ul>
              {progress.missing.length === 0 ? (
                <li>{progress.done}</li>
              ) : (
                progress.missing.map((each) => <li key={each}>{each}</li>)
              )}
            </ul>
            {progress.tooEarly.map((each) => (
              <p key={each} className="caution finding">
                {each}
              </p>
            ))}
          </div>
          <div>
            <h3 className="small-title">{progress.protocol}</h3>
            <ul className="muted">
              {progress.lines.map((each) => (
                <li key={each}>{each}</li>
              ))}
            </ul>
            {progress.landings !== "" && <p className="muted">{progress.landings}</p>}
          </div>
        </div>
      )}
      {canWrite && session.description.protocol !== undefined && (
        <AddToProtocol folder={session.folder} protocol={session.description.protocol} />
      )}
      {canWrite && <AskedAnswers folder={session.folder} asked={askedAnswers(session)} />}
      <section aria-labelledby="current-cautions">
        <h3 id="current-cautions" className="small-title">
          {prose.cautionsAndReadings}
        </h3>
        <CautionsPanel session={session} canWrite={canWrite} {...(tester !== undefined && { tester })} />
      </section>
      <div className="form-buttons">
        {canWrite && <AddRecordings folder={session.folder} isToday={isToday} />}
        {isToday && canWrite && (
          <Button variant="default" onClick={() => onShow("recordings")}>
            {prose.watchFolder}
          </Button>
        )}
        <Button variant="default" onClick={() => onShow("traces")}>
          {prose.traces}
        </Button>
        <Button variant="default" onClick={() => onShow("sheet")}>
          {prose.sheet}
        </Button>
      </div>
      {isToday && canWrite && <p className="muted">{prose.aFolderWatchedToday}</p>}
      <Stopping session={session} canStop={isToday && canWrite} />
    </section>
  );
}

/** Recordings of this computer straight into the session. */
function AddRecordings({ folder, isToday }: { readonly folder: string; readonly isToday: boolean }) {
  const { host, apply, report } = useWorkspace();
  const input = useRef<HTMLInputElement>(null);
  const [outcome, setOutcome] = useState("");
  const add = async (files: readonly PickedFile[]) => {
    const taken: BatchFile[] = [];
    for (const file of files) taken.push(await takeOne(host, { ...file, path: `${folder}/${file.path}` }, ""));
    setOutcome(addedWords(taken));
    await apply("workspace.read", {});
  };
  return (
    <>
      <Button variant={isToday ? "filled" : "default"} onClick={() => input.current?.click()}>
        {prose.addRecordings}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label={prose.recordingsOfSession}
        onChange={(event) => {
          const files = chosenFiles(event.currentTarget.files ?? []);
          event.currentTarget.value = "";
          if (files.length > 0) add(files).catch(report);
        }}
      />
      <span className="muted" aria-live="polite">
        {outcome}
      </span>
    </>
  );
}

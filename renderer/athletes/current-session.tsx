import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import { askedAnswers } from "../../core/protocol/asked-answers.ts";
import { sessionProgress } from "../../core/protocol/session-progress.ts";
import type { SessionResult } from "../../core/result.ts";
import type { StoredRecord } from "../../electron/register/record-tables.ts";
import { AskedAnswers } from "../shell/asked-answers.tsx";
import { dateWords } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { CautionForm } from "./caution-form.tsx";
import { type CautionMoment, momentWords } from "./caution-questions.ts";
import { today } from "./dates.ts";
import { momentsAsked } from "./moments-asked.ts";

interface CurrentSessionProps {
  readonly session: SessionResult;
  readonly record: StoredRecord<"sessions">;
  readonly canWrite: boolean;
  readonly onShow: (area: "recordings" | "traces" | "sheet") => void;
}

/** The session shown: what is still missing, the gate, the cautions, and stopping it. */
export function CurrentSession({ session, record, canWrite, onShow }: CurrentSessionProps) {
  const progress = sessionProgress(session);
  const { date, milestone } = record.content;
  const when = [date === undefined ? "without a date" : dateWords(date), milestone].filter(Boolean).join(" · ");
  const isToday = date === today();
  return (
    <section className="panel panel-padded current-session" aria-labelledby="current-title">
      <h2 id="current-title" className="panel-title">
        Session shown: {when}
      </h2>
      {!session.gate.open && (
        <p className="caution finding">{session.gate.reason} Values are shown; statuses are withheld today.</p>
      )}
      {progress === undefined ? (
        <p className="muted">No protocol was chosen for this session, so nothing is counted against one.</p>
      ) : (
        <div className="progress">
          <div>
            <h3 className="small-title">Still missing</h3>
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
      {canWrite && <AskedAnswers folder={session.folder} asked={askedAnswers(session)} />}
      <CautionsAsked session={session} record={record} canAsk={isToday && canWrite} />
      <div className="form-buttons">
        {canWrite && <AddRecordings folder={session.folder} isToday={isToday} />}
        {isToday && canWrite && (
          <Button variant="default" onClick={() => onShow("recordings")}>
            Watch a folder
          </Button>
        )}
        <Button variant="default" onClick={() => onShow("traces")}>
          Traces
        </Button>
        <Button variant="default" onClick={() => onShow("sheet")}>
          Sheet
        </Button>
      </div>
      {isToday && canWrite && (
        <p className="muted">A folder watched today, while this session is shown, puts its recordings into it.</p>
      )}
      <Stopping session={session} canStop={isToday && canWrite} />
    </section>
  );
}

interface CautionsAskedProps extends Pick<CurrentSessionProps, "session" | "record"> {
  /** Today's session: what was not asked can still be. */
  readonly canAsk: boolean;
}

function CautionsAsked({ session, record, canAsk }: CautionsAskedProps) {
  const [asking, setAsking] = useState<CautionMoment>();
  const all = momentsAsked(session.description.protocol, session.trials, record.content.cautions ?? []);
  const moments = canAsk ? all : all.filter(({ answered }) => answered !== undefined);
  return (
    <div>
      <h3 className="small-title">Cautions</h3>
      {moments.length === 0 && <p className="muted">No answers were recorded.</p>}
      <ul className="caution-moments">
        {moments.map(({ moment, answered, isDue }) => (
          <li key={moment} className={isDue ? "caution finding" : undefined}>
            <span>
              {answered === undefined
                ? `Not asked yet ${momentWords[moment]}.`
                : `Answered ${momentWords[moment]}: ${dateWords(answered.date)}, ${answered.answeredBy.replace(/\.$/, "")}.`}
            </span>
            {canAsk && (
              <Button
                size="xs"
                variant="default"
                aria-label={`${answered === undefined ? "Ask" : "Ask again"} ${momentWords[moment]}`}
                onClick={() => setAsking(moment)}
              >
                {answered === undefined ? "Ask now" : "Ask again"}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {asking !== undefined && (
        <CautionForm key={asking} session={record} before={asking} onClose={() => setAsking(undefined)} />
      )}
    </div>
  );
}

/** Recordings of this computer straight into the session. */
function AddRecordings({ folder, isToday }: { readonly folder: string; readonly isToday: boolean }) {
  const { host, apply, report } = useWorkspace();
  const input = useRef<HTMLInputElement>(null);
  const [outcome, setOutcome] = useState("");
  const add = async (files: readonly File[]) => {
    const refused: string[] = [];
    for (const file of files) {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const taken = await host.call("recordings.add", { path: `${folder}/${file.name}`, bytes });
      if (taken.outcome === "refused") refused.push(`${file.name}: ${taken.message}`);
    }
    setOutcome([`${files.length} taken in or looked at.`, ...refused].join(" "));
    await apply("workspace.read", {});
  };
  return (
    <>
      <Button variant={isToday ? "filled" : "default"} onClick={() => input.current?.click()}>
        Add recordings
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label="Recordings of this session"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
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

/** Stopping with a reason, and taking that back. */
function Stopping({ session, canStop }: { readonly session: SessionResult; readonly canStop: boolean }) {
  const { apply } = useWorkspace();
  const [reason, setReason] = useState("");
  const { folder, description } = session;
  if (description.stopped !== undefined) {
    return (
      <div className="form-buttons">
        <p>
          <strong>Stopped:</strong> {description.stopped.reason}
        </p>
        {canStop && (
          <Button
            size="xs"
            variant="default"
            onClick={() => void apply("session.change", { folder, change: { stopped: null } })}
          >
            It was not stopped
          </Button>
        )}
      </div>
    );
  }
  if (!canStop) return null;
  return (
    <form
      className="stopping"
      onSubmit={(event) => {
        event.preventDefault();
        void apply("session.change", { folder, change: { stopped: { reason: reason.trim() } } });
      }}
    >
      <TextInput
        label="Stop the session because"
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <Button type="submit" variant="default" disabled={reason.trim() === ""}>
        Stop the session
      </Button>
    </form>
  );
}

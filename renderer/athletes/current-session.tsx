import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import { type CautionsDue, cautionsDue } from "../../core/gate/cautions-due.ts";
import { testLoad, trialLoad } from "../../core/gate/test-load.ts";
import { askedAnswers } from "../../core/protocol/asked-answers.ts";
import { sessionProgress } from "../../core/protocol/session-progress.ts";
import type { SessionResult } from "../../core/result.ts";
import type { StoredRecord } from "../../electron/register/record-tables.ts";
import { addedWords } from "../recordings/added-words.ts";
import { chosenFiles, type PickedFile } from "../recordings/dropped-files.ts";
import { type BatchFile, takeOne } from "../recordings/take-in.ts";
import { AddToProtocol } from "../shell/add-to-protocol.tsx";
import { AskedAnswers } from "../shell/asked-answers.tsx";
import { dateWords } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { CautionForm } from "./caution-form.tsx";
import { type Asking, askingWords } from "./caution-questions.ts";
import { today } from "./dates.ts";

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
      {canWrite && session.description.protocol !== undefined && (
        <AddToProtocol folder={session.folder} protocol={session.description.protocol} />
      )}
      {canWrite && <AskedAnswers folder={session.folder} asked={askedAnswers(session)} />}
      <CautionsAsked session={session} canAsk={canWrite} />
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

interface CautionsAskedProps extends Pick<CurrentSessionProps, "session"> {
  readonly canAsk: boolean;
}

/** Where the askings of the session stand, and a way to answer them; a later answer is marked as later. */
function CautionsAsked({ session, canAsk }: CautionsAskedProps) {
  const [asking, setAsking] = useState<Asking>();
  const planned = (session.description.protocol?.tests ?? []).map(testLoad);
  const due = cautionsDue(session.gate, planned, session.trials.map(trialLoad));
  return (
    <div>
      <h3 className="small-title">Cautions</h3>
      <ul className="caution-moments">
        {due.map(({ asking: each, state, isDue }) => (
          <li key={each} className={isDue ? "caution finding" : undefined}>
            <span>{stateWords(session, each, state)}</span>
            {canAsk && (
              <Button
                size="xs"
                variant="default"
                aria-label={`${state === "open" ? "Ask" : "Ask again"} ${askingWords[each]}`}
                onClick={() => setAsking(each)}
              >
                {state === "open" ? "Ask now" : "Ask again"}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {asking !== undefined && (
        <CautionForm key={asking} session={session} asking={asking} onClose={() => setAsking(undefined)} />
      )}
    </div>
  );
}

function stateWords({ gate }: SessionResult, asking: Asking, state: CautionsDue["state"]): string {
  const { given, notKnown } = gate.answered;
  const last = given.findLast((each) => each.asked === asking);
  const by = last === undefined ? "" : `: ${dateWords(last.meant.slice(0, 10))}, ${last.by.replace(/\.$/, "")}`;
  if (state === "answered") return `Answered ${askingWords[asking]}${by}.`;
  if (state === "not known") return `Not known, as ${notKnown?.by ?? ""} states.`;
  return last === undefined
    ? `Not asked yet ${askingWords[asking]}.`
    : `Not fully answered ${askingWords[asking]}${by}.`;
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
        Add recordings
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label="Recordings of this session"
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

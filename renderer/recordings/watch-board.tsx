import { Button } from "@mantine/core";
import type { WatchedTrial, WatchView } from "../../electron/boundary/watch-view.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { AskedAnswers } from "../shell/asked-answers.tsx";
import { headlineOf } from "../shell/headline.ts";
import { Quantity } from "../shell/quantity.tsx";
import { TakeOutButton } from "../shell/take-out-button.tsx";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { ProtocolChoice } from "./protocol-choice.tsx";
import type { Watch } from "./use-watch.ts";
import { VerdictMark } from "./verdict-mark.tsx";
import { WatchCautions } from "./watch-cautions.tsx";
import { WatchNextForm } from "./watch-next-form.tsx";
import { type Verdict, verdictOf, verdictWords, watchedName, watchSentence } from "./watch-words.ts";

const prose = words.screens.watch;

interface WatchBoardProps {
  readonly view: WatchView;
  readonly workspace: Workspace;
  readonly change: Watch["change"];
}

/** The watched session, large enough to read across the room: the newest jump, the protocol, what is missing. */
export function WatchBoard({ view, workspace, change }: WatchBoardProps) {
  const { newest, progress, cautions, questions, anotherAthlete } = view;
  return (
    <section className="panel watch-board" aria-labelledby="watch-title">
      <div className="watch-head">
        <h2 id="watch-title" className="panel-title">
          {prose.watchedSession}
        </h2>
        <p className={view.state === "unreachable" ? "finding caution" : "muted"} role="status">
          {watchSentence(view)}
        </p>
        <Button variant="default" onClick={() => void change("watch.stop", {})}>
          {prose.stopWatching}
        </Button>
      </div>
      {view.notTaken.map((sentence) => (
        <p key={sentence} className="muted">
          {sentence}
        </p>
      ))}
      <WatchNextForm key={JSON.stringify(view.next)} next={view.next} change={change} />
      {cautions !== undefined && <WatchCautions cautions={cautions} workspace={workspace} />}
      <div aria-live="polite" className="watch-newest">
        {newest === undefined && <p className="watch-waiting">{prose.waitingForFirstRecording}</p>}
        {newest !== undefined && newest.problem !== "" && (
          <div className="watch-trial">
            <p className="watch-verdict">
              <VerdictMark mark="does not" />
              {prose.doesNotCount}
            </p>
            <p className="watch-reason">
              {newest.file}: {newest.problem}
            </p>
          </div>
        )}
        {newest?.trials.map((trial) => (
          <NewestTrial key={trial.trial} trial={trial} session={newest.session} file={newest.file} />
        ))}
      </div>
      {anotherAthlete !== undefined && <p className="finding caution">{anotherAthlete}</p>}
      {newest !== undefined && questions !== undefined && (
        <AskedAnswers folder={newest.session} asked={questions} isLarge />
      )}
      {progress !== undefined && (
        <div className="watch-protocol">
          <h3 className="panel-title">{progress.protocol}</h3>
          <ul className="watch-lines">
            {progress.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {progress.landings !== "" && <p className="muted">{progress.landings}</p>}
          {progress.done !== "" && <p className="watch-next-step">{progress.done}</p>}
          {progress.tooEarly.map((line) => (
            <p key={line} className="finding caution">
              {line}
            </p>
          ))}
        </div>
      )}
      {newest !== undefined && progress === undefined && <ProtocolChoice folder={newest.session} />}
    </section>
  );
}

interface NewestTrialProps {
  readonly trial: WatchedTrial;
  readonly session: string;
  readonly file: string;
}

function NewestTrial({ trial, session, file }: NewestTrialProps) {
  const { apply } = useWorkspace();
  const { looksLike, reason, action } = trial;
  const verdict = verdictOf(trial);
  return (
    <div className="watch-trial">
      <p className="watch-name">{watchedName(trial)}</p>
      <p className="watch-verdict">
        <VerdictMark mark={markOf(verdict)} />
        {verdictWords[verdict]}
      </p>
      {trial.test !== undefined && <WatchedMeasures trial={trial} />}
      {reason !== "" && <p className="watch-reason">{`${reason} ${action}`.trim()}</p>}
      {trial.next !== "" && <p className="watch-next-step">{trial.next}</p>}
      {trial.leaveOut && <TakeOutButton folder={session} files={[file]} />}
      {looksLike !== undefined && (
        <Button
          onClick={() =>
            void apply("recordings.answer", { folder: session, files: [file], answers: { test: looksLike.test } })
          }
        >
          {prose.takeItAs(words.tests.withArticle(looksLike.test))}
        </Button>
      )}
    </div>
  );
}

function markOf(verdict: Verdict) {
  return verdict === "counts, look" ? "counts" : verdict;
}

/** The one or two values by which a trial of this test is told from the others. */
function WatchedMeasures({ trial }: { readonly trial: WatchedTrial }) {
  if (trial.test === undefined) return null;
  const headline = headlineOf(trial.test);
  const shown = [headline.id, ...(headline.beside === undefined ? [] : [headline.beside.id])].flatMap((id) =>
    trial.measures.filter((measure) => measure.id === id),
  );
  return (
    <p className="watch-values">
      {shown.map((measure) => (
        <span key={measure.id} className="watch-value">
          <span className="watch-label">{words.measures.label(measure.id)}</span>{" "}
          <Quantity value={measure.value} uncertainty={measure.uncertainty} unit={measure.unit} withUnit />
        </span>
      ))}
    </p>
  );
}

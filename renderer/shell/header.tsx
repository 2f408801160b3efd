import { Button, NativeSelect } from "@mantine/core";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
import { AtTheMachine } from "./at-the-machine.tsx";
import { sessionChoices } from "./session-choices.ts";
import type { Steps } from "./use-steps.ts";
import { athleteWords, dateWords, injuryWords } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.frame;

interface HeaderProps {
  readonly steps: Steps;
  readonly onOpen: () => void;
}

/** Whose session is shown, the choice of another one, and taking changes back. */
export function Header({ steps, onOpen }: HeaderProps) {
  const { workspace } = useWorkspace();
  if (workspace === undefined) return null;
  return (
    <section className="header" aria-label={prose.sessionRegion}>
      <SessionWords workspace={workspace} />
      <div className="header-actions">
        <Button
          variant="default"
          disabled={workspace.undo === ""}
          title={workspace.undo === "" ? prose.nothingToUndo : prose.undoStep(workspace.undo)}
          onClick={() => steps.take("undo")}
        >
          {prose.undo}
        </Button>
        <Button
          variant="default"
          disabled={workspace.redo === ""}
          title={workspace.redo === "" ? prose.nothingToRedo : prose.redoStep(workspace.redo)}
          onClick={() => steps.take("redo")}
        >
          {prose.redo}
        </Button>
        <Button onClick={onOpen}>{prose.openRecordings}</Button>
      </div>
    </section>
  );
}

/** The athlete, the day and the milestone, which choose another session; below them the injury in words. */
function SessionWords({ workspace }: { readonly workspace: Workspace }) {
  const { apply } = useWorkspace();
  const { session, sessions, folder, register } = workspace;
  const { date, milestone } = session?.description ?? {};
  const when = [date === undefined ? prose.dateNotStated : dateWords(date), milestone ?? ""];
  return (
    <div className="header-words">
      <div className="header-line">
        <strong className="header-athlete">
          {session === undefined ? prose.noSession : athleteWords(session.description)}
        </strong>
        {sessions.length > 1 || (session === undefined && sessions.length > 0) ? (
          <NativeSelect
            aria-label={prose.sessionShown}
            className="fitted-select"
            size="xs"
            value={folder}
            onChange={(event) => void apply("workspace.show", { folder: event.currentTarget.value })}
            data={sessionChoices(workspace)}
          />
        ) : (
          session !== undefined && <span className="muted">{when.filter((part) => part !== "").join(" · ")}</span>
        )}
      </div>
      {session !== undefined && <p className="muted">{injuryWords(session.description)}</p>}
      {register?.kind === "own" && register.readOnlyBecause === undefined && <AtTheMachine register={register} />}
    </div>
  );
}

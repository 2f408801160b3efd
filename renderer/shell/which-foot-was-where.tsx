import { Button, Checkbox, Modal } from "@mantine/core";
import { useMemo, useState } from "react";
import { countOf } from "../../core/plain-words.ts";
import type { SessionResult } from "../../core/result.ts";
import { groupName, trialGroups } from "../../core/sheet/sheet-trials.ts";
import { namedByContradiction } from "./named-by-contradiction.ts";
import { sentenceCase } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

interface WhichFootWasWhereProps {
  readonly session: SessionResult;
}

/**
 * Says that single-leg trials contradict which foot stood on which plate, and lets it be resolved: left and right of
 * chosen recordings are turned round in one step that can be taken back. Nothing where nothing contradicts.
 */
export function WhichFootWasWhere({ session }: WhichFootWasWhereProps) {
  const [asking, setAsking] = useState(false);
  const contradiction = session.findings.find((each) => each.code === "plates-contradict");
  if (contradiction === undefined) return null;
  return (
    <section className="caution finding plates-question" aria-label="Which foot was where">
      <p>
        {contradiction.message} {contradiction.action}
      </p>
      <Button variant="default" size="xs" onClick={() => setAsking(true)}>
        Turn left and right round…
      </Button>
      <Modal
        opened={asking}
        onClose={() => setAsking(false)}
        title="Which foot was where?"
        closeButtonProps={{ "aria-label": "Close" }}
        size="lg"
        centered
        transitionProps={{ duration: 0 }}
      >
        <TurnRound session={session} onDone={() => setAsking(false)} />
      </Modal>
    </section>
  );
}

interface TurnRoundProps extends WhichFootWasWhereProps {
  readonly onDone: () => void;
}

function TurnRound({ session, onDone }: TurnRoundProps) {
  const { apply } = useWorkspace();
  const groups = useMemo(() => recordingsOnTwoPlates(session), [session]);
  const [wanted, setWanted] = useState<ReadonlySet<string>>(() => namedByContradiction(session));
  const chosen = groups.flatMap(({ files }) => files).filter((file) => wanted.has(file));
  const choose = (files: readonly string[], isWanted: boolean) => {
    const next = new Set(wanted);
    for (const file of files) {
      if (isWanted) next.add(file);
      else next.delete(file);
    }
    setWanted(next);
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
        void apply("trials.statePlates", { folder: session.folder, files: chosen, feet: "swap" });
      }}
    >
      <p>
        Choose the recordings in which the athlete stood the other way round than it says now; those that the
        contradiction speaks of are chosen already. What is called left in them becomes right. Undo takes it back in one
        step.
      </p>
      {groups.map(({ title, files }) => {
        const count = files.filter((file) => wanted.has(file)).length;
        return (
          <fieldset key={title} className="plates-group">
            <legend className="visually-hidden">{title}</legend>
            <Checkbox
              label={`${title}: ${count} of ${files.length}`}
              checked={count === files.length}
              indeterminate={count > 0 && count < files.length}
              onChange={(event) => choose(files, event.currentTarget.checked)}
            />
            <div className="plates-files">
              {files.map((file) => (
                <Checkbox
                  key={file}
                  size="xs"
                  label={file}
                  checked={wanted.has(file)}
                  onChange={(event) => choose([file], event.currentTarget.checked)}
                />
              ))}
            </div>
          </fieldset>
        );
      })}
      <div className="question-buttons">
        <Button type="submit" disabled={chosen.length === 0}>
          Turn left and right round in {countOf(chosen.length, "recording")}
        </Button>
        <Button variant="default" onClick={onDone}>
          Cancel
        </Button>
      </div>
    </form>
  );
}

/** The recordings with a plate for each foot, by what was done in them. */
function recordingsOnTwoPlates(session: SessionResult): readonly { title: string; files: readonly string[] }[] {
  const onTwo = session.trials.filter(
    (trial) => trial.plates.length === 2 && trial.plates.every((plate) => plate.limb !== "both"),
  );
  return trialGroups(onTwo).map((group) => ({
    title: sentenceCase(groupName(group)),
    files: [...new Set(group.trials.map((trial) => trial.file))],
  }));
}

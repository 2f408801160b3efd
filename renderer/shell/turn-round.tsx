import { Button } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { words } from "../words/words.ts";
import { namedByContradiction } from "./named-by-contradiction.ts";
import { RecordingGroups } from "./recording-groups.tsx";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface TurnRoundProps {
  readonly session: SessionResult;
  readonly onDone: () => void;
}

/** Turns left and right round in chosen recordings. */
export function TurnRound({ session, onDone }: TurnRoundProps) {
  const { apply } = useWorkspace();
  const [wanted, setWanted] = useState<ReadonlySet<string>>(() => namedByContradiction(session));
  const onTwo = session.trials.filter(
    (trial) => trial.plates.length === 2 && trial.plates.every((plate) => plate.limb !== "both"),
  );
  const files = [...new Set(onTwo.map((trial) => trial.file))].filter((file) => wanted.has(file));
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
        void apply("trials.statePlates", { folder: session.folder, files, feet: "swap" });
      }}
    >
      <p>{prose.chooseTurnedRound}</p>
      <RecordingGroups trials={onTwo} chosen={wanted} onChange={setWanted} />
      <div className="question-buttons">
        <Button type="submit" disabled={files.length === 0}>
          {prose.turnRoundIn(files.length)}
        </Button>
        <Button variant="default" onClick={onDone}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

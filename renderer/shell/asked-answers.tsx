import { Button, TextInput } from "@mantine/core";
import { useState } from "react";
import type { AskedAnswer, LikelyAnswer } from "../../core/protocol/asked-answers.ts";
import { words } from "../words/words.ts";
import { boxHeightFrom } from "./box-height.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface AskedAnswersProps {
  readonly folder: string;
  readonly asked: readonly AskedAnswer[];
  /** Large enough to read across the room. */
  readonly isLarge?: boolean;
}

/**
 * What trials wait for before they count, each answer likely one click away and one step of undo. Nothing where nothing
 * waits.
 */
export function AskedAnswers({ folder, asked, isLarge = false }: AskedAnswersProps) {
  if (asked.length === 0) return null;
  return (
    <section className={isLarge ? "asked-answers asked-large" : "asked-answers"} aria-label={prose.whatTrialsWaitFor}>
      {asked.map((each) => (
        <Question key={each.question} folder={folder} asked={each} />
      ))}
    </section>
  );
}

function Question({ folder, asked }: { readonly folder: string; readonly asked: AskedAnswer }) {
  const { apply } = useWorkspace();
  const { about, question, rows, likely } = asked;
  const take = ({ states }: LikelyAnswer) => {
    if (states.kind === "trials") void apply("recordings.assign", { folder, rows: states.rows });
    else void apply("trials.statePlates", { folder, files: states.files, feet: states.feet });
  };
  return (
    <div className="caution finding asked-answer">
      <p>{question}</p>
      <div className="asked-buttons">
        {likely.map((answer) => (
          <span key={answer.words} className="asked-likely">
            <Button size="xs" variant="default" onClick={() => take(answer)}>
              {answer.words}
            </Button>{" "}
            <span>{answer.because}</span>
          </span>
        ))}
        {about === "box height" && (
          <OtherBox
            isFirst={likely.length === 0}
            onState={(dropHeightMetres) =>
              void apply("recordings.assign", { folder, rows: rows.map((row) => ({ ...row, dropHeightMetres })) })
            }
          />
        )}
      </div>
    </div>
  );
}

interface OtherBoxProps {
  readonly isFirst: boolean;
  readonly onState: (metres: number) => void;
}

/** The height of the box as it is typed, for all trials asked about. */
function OtherBox({ isFirst, onState }: OtherBoxProps) {
  const [written, setWritten] = useState("");
  const [problem, setProblem] = useState("");
  return (
    <form
      className="asked-box"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const height = boxHeightFrom(written);
        if ("problem" in height) return setProblem(height.problem);
        setProblem("");
        onState(height.metres);
      }}
    >
      <TextInput
        size="xs"
        label={isFirst ? prose.boxHeight : prose.otherBoxHeight}
        inputMode="decimal"
        value={written}
        error={problem === "" ? undefined : problem}
        onChange={(event) => setWritten(event.currentTarget.value)}
      />
      <Button type="submit" size="xs" variant="default" disabled={written.trim() === ""}>
        {prose.stateIt}
      </Button>
    </form>
  );
}

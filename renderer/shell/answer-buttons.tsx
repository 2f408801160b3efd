import { Button } from "@mantine/core";
import type { Answer, StatementName, Statements } from "../../core/ground/answer.ts";
import type { RecordingAnswers } from "../../electron/boundary/stated-changes.ts";
import { words } from "../words/words.ts";
import { useWorkspace } from "./workspace.tsx";

/** The file, or the trial of it, that answers are about. */
export interface AnsweredPlace {
  readonly folder: string;
  readonly file: string;
  /** Absent where the answer holds for the whole file. */
  readonly trial?: number;
}

type Stated = { readonly [Name in StatementName]?: Statements[Name] };

/** Taking a recording out and keeping a trial have buttons of their own; body mass is stated for the session. */
const elsewhere: ReadonlySet<string> = new Set<StatementName | "asks">(["leftOut", "kept", "massKg", "asks"]);

/** What would settle a finding, each a button that states it. */
export function AnswerButtons({
  answers,
  place,
}: {
  readonly answers: readonly Answer[];
  readonly place: AnsweredPlace;
}) {
  const { apply } = useWorkspace();
  const offered = answers.filter((answer): answer is Exclude<Answer, { asks: unknown }> =>
    Object.keys(answer).every((name) => !elsewhere.has(name)),
  );
  if (offered.length === 0) return null;
  const { folder, file, trial } = place;
  const state = (answer: Stated) => {
    const { test, limb, leadingLeg, dropHeightMetres, ...ofFile } = answer;
    const isAssignment = Object.keys(ofFile).length === 0;
    if (!isAssignment || trial === undefined) {
      void apply("recordings.answer", { folder, files: [file], answers: answer as RecordingAnswers });
    } else void apply("recordings.assign", { folder, rows: [{ file, trial, ...answer } as const] });
  };
  return (
    <span className="question-buttons">
      {offered.map((answer) => (
        <Button key={JSON.stringify(answer)} size="compact-xs" variant="default" onClick={() => state(answer)}>
          {labelOf(answer)}
        </Button>
      ))}
    </span>
  );
}

function labelOf(answer: Stated): string {
  return Object.entries(answer)
    .map(([name, value]) => (words.answers[name as StatementName] as (stated: unknown) => string)(value))
    .join(", ");
}

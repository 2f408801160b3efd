import { TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { today } from "../shell/dates.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { AnswerFields } from "./answer-fields.tsx";
import { type Asking, answeredCautions, askingWords, noAnswers } from "./answers.ts";
import { FormDialog } from "./form-dialog.tsx";
import { meantNow } from "./moments.ts";

const prose = words.screens.cautions;

interface AskingFormProps {
  readonly session: SessionResult;
  readonly asking: Asking;
  /** Who tests, where that is known. */
  readonly tester?: string;
  readonly onClose: () => void;
}

/** Asks the cautions of a session that is open; the answers join those that are there. */
export function AskingForm({ session, asking, tester, onClose }: AskingFormProps) {
  const { apply } = useWorkspace();
  const { description, gate, folder } = session;
  const [answers, setAnswers] = useState(() => noAnswers(carriedName(gate.answered.given.at(-1)?.by, tester)));
  const [problem, setProblem] = useState("");
  // Answers belong to a day; recordings that are coming in are of today.
  const [date, setDate] = useState(description.date ?? today());
  const injured = description.involved !== "none";
  const keep = async () => {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return setProblem(prose.stateTheDate);
    const answered = answeredCautions(answers, { asking, injured, meant: meantNow(date) });
    if ("problem" in answered) return setProblem(answered.problem);
    setProblem("");
    carryName(answers.by);
    const isDated = date === description.date || (await apply("session.change", { folder, change: { date } }));
    if (!isDated) return;
    if (await apply("cautions.add", { folder, addition: answered.addition })) onClose();
  };
  return (
    <FormDialog
      title={prose.cautionsWhen(askingWords[asking])}
      keep={prose.keepAnswers}
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      {description.date === undefined && (
        <TextInput
          label={prose.dateNotStatedYet}
          type="date"
          value={date}
          onChange={(event) => setDate(event.currentTarget.value)}
        />
      )}
      <AnswerFields asking={asking} injured={injured} written={answers} onChange={setAnswers} />
      <p className="muted">{prose.keptForGood}</p>
    </FormDialog>
  );
}

import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { StoredRecord } from "../../electron/register/record-tables.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { CautionFields } from "./caution-fields.tsx";
import { answeredCautions, type CautionMoment, momentWords, noAnswers } from "./caution-questions.ts";
import { today } from "./dates.ts";

interface CautionFormProps {
  readonly session: StoredRecord<"sessions">;
  readonly before: CautionMoment;
  readonly onClose: () => void;
}

/** Asks the cautions once more, before a part of the session. */
export function CautionForm({ session, before, onClose }: CautionFormProps) {
  const { apply } = useWorkspace();
  const [answers, setAnswers] = useState(noAnswers);
  const [problem, setProblem] = useState("");
  const keep = async () => {
    const answered = answeredCautions(answers, before, { date: today(), instant: new Date().toISOString() });
    if ("problem" in answered) return setProblem(answered.problem);
    const { caution, pain, effusion } = answered;
    const moment = before === "session" ? "before" : "during";
    const { content } = session;
    const notes = {
      cautions: [caution],
      pain: { ...content.pain, [moment]: pain },
      effusion: { ...content.effusion, [moment]: effusion },
    };
    if (await apply("sessions.note", { session: session.id, notes })) onClose();
  };
  return (
    <Modal
      opened
      onClose={onClose}
      title={`Cautions ${momentWords[before]}`}
      closeButtonProps={{ "aria-label": "Close" }}
      size="lg"
      centered
      transitionProps={{ duration: 0 }}
    >
      <form
        className="session-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        <CautionFields written={answers} onChange={setAnswers} />
        {problem !== "" && (
          <p className="caution finding" role="alert">
            {problem}
          </p>
        )}
        <div className="form-buttons">
          <Button type="submit">Keep the answers</Button>
          <Button variant="default" onClick={onClose}>
            Cancel
          </Button>
        </div>
      </form>
    </Modal>
  );
}

import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { CautionFields } from "./caution-fields.tsx";
import { type Asking, answeredCautions, askingWords, noAnswers } from "./caution-questions.ts";
import { meantNow } from "./dates.ts";

interface CautionFormProps {
  readonly session: SessionResult;
  readonly asking: Asking;
  readonly onClose: () => void;
}

/** Asks the cautions of a session that is open; the answers join those that are there. */
export function CautionForm({ session, asking, onClose }: CautionFormProps) {
  const { apply } = useWorkspace();
  const { description, gate, folder } = session;
  const [answers, setAnswers] = useState(() => noAnswers(gate.answered.given.at(-1)?.by ?? ""));
  const [problem, setProblem] = useState("");
  const injured = description.involved !== "none";
  const keep = async () => {
    if (description.date === undefined) return setProblem("State the date of the session first.");
    const answered = answeredCautions(answers, { asking, injured, meant: meantNow(description.date) });
    if ("problem" in answered) return setProblem(answered.problem);
    if (await apply("cautions.add", { folder, addition: answered.addition })) onClose();
  };
  return (
    <Modal
      opened
      onClose={onClose}
      title={`Cautions ${askingWords[asking]}`}
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
        <CautionFields asking={asking} injured={injured} written={answers} onChange={setAnswers} />
        <p className="muted">Answers and readings are kept for good; a later one joins them and takes none away.</p>
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

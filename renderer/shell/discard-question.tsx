import { Button, Modal } from "@mantine/core";
import { words } from "../words/words.ts";

const prose = words.screens.steps;

/** What is about to be done that leaves unsaved decisions behind. */
export interface Discarding {
  /** Names the deed in the title: "Close all sessions". */
  readonly title: string;
  readonly onDiscard: () => void;
}

interface DiscardQuestionProps {
  /** Absent while nothing is asked. */
  readonly discarding: Discarding | undefined;
  readonly onKeep: () => void;
}

/** Asks before decisions are lost that no session.json holds yet. Escape keeps them; the focus goes back to the asker. */
export function DiscardQuestion({ discarding, onKeep }: DiscardQuestionProps) {
  return (
    <Modal
      opened={discarding !== undefined}
      onClose={onKeep}
      title={`${discarding?.title ?? ""}?`}
      withCloseButton={false}
      centered
      transitionProps={{ duration: 0 }}
    >
      <p>{prose.wouldBeLost}</p>
      <div className="question-buttons">
        <Button data-autofocus onClick={onKeep}>
          {prose.keepSessionsOpen}
        </Button>
        <Button
          variant="default"
          onClick={() => {
            onKeep();
            discarding?.onDiscard();
          }}
        >
          {prose.discardDecisions}
        </Button>
      </div>
    </Modal>
  );
}

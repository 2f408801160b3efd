import { Button, Modal } from "@mantine/core";
import { words } from "../words/words.ts";
import type { AskedStep } from "./use-steps.ts";

const prose = words.screens.steps;

/** Asks before a step is taken that changes more than the session shown. Escape leaves everything as it is. */
export function StepQuestion({ asked }: { readonly asked: AskedStep | undefined }) {
  return (
    <Modal
      opened={asked !== undefined}
      onClose={() => asked?.leave()}
      title={asked?.direction === "redo" ? prose.redoBeyond : prose.undoBeyond}
      withCloseButton={false}
      centered
      transitionProps={{ duration: 0 }}
    >
      {asked !== undefined && <Question asked={asked} />}
    </Modal>
  );
}

function Question({ asked: { direction, words, beyond, within, take, leave } }: { readonly asked: AskedStep }) {
  const deed = direction === "undo" ? prose.takeBack : prose.doAgain;
  return (
    <>
      <p>
        {prose.whatTheStepChanges(direction === "undo" ? prose.newestStep : prose.stepTakenBackLast, words, beyond)}
      </p>
      <div className="question-buttons">
        <Button data-autofocus variant="default" onClick={leave}>
          {prose.leaveEverything}
        </Button>
        <Button variant="default" onClick={() => take("it")}>
          {deed} “{words}”
        </Button>
        {within !== undefined && (
          <Button variant="default" onClick={() => take("within")}>
            {prose.onlyTheStepOfThisSession(deed, within.words)}
          </Button>
        )}
      </div>
    </>
  );
}

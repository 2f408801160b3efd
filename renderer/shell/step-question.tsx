import { Button, Modal } from "@mantine/core";
import type { AskedStep } from "./use-steps.ts";

/** Asks before a step is taken that changes more than the session shown. Escape leaves everything as it is. */
export function StepQuestion({ asked }: { readonly asked: AskedStep | undefined }) {
  return (
    <Modal
      opened={asked !== undefined}
      onClose={() => asked?.leave()}
      title={
        asked?.direction === "redo"
          ? "Do again what reaches beyond this session?"
          : "Take back what reaches beyond this session?"
      }
      withCloseButton={false}
      centered
      transitionProps={{ duration: 0 }}
    >
      {asked !== undefined && <Question asked={asked} />}
    </Modal>
  );
}

function Question({ asked: { direction, words, beyond, within, take, leave } }: { readonly asked: AskedStep }) {
  const deed = direction === "undo" ? "Take back" : "Do again";
  return (
    <>
      <p>
        {direction === "undo" ? "The newest step" : "The step taken back last"} is “{words}”. It changes {beyond}.
      </p>
      <div className="question-buttons">
        <Button data-autofocus variant="default" onClick={leave}>
          Leave everything as it is
        </Button>
        <Button variant="default" onClick={() => take("it")}>
          {deed} “{words}”
        </Button>
        {within !== undefined && (
          <Button variant="default" onClick={() => take("within")}>
            {deed} only “{within.words}”, of this session
          </Button>
        )}
      </div>
    </>
  );
}

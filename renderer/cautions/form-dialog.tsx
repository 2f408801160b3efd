import "./cautions.css";
import { Button, Modal } from "@mantine/core";
import type { ReactNode } from "react";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

interface FormDialogProps {
  readonly title: string;
  /** On the button that keeps what was written. */
  readonly keep: string;
  /** Why it cannot be kept, a sentence; "" while nothing is wrong. */
  readonly problem: string;
  readonly onKeep: () => void;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A form of its own over the screen; Escape leaves it, Enter keeps what was written. */
export function FormDialog({ title, keep, problem, onKeep, onClose, children }: FormDialogProps) {
  return (
    <Modal
      opened
      onClose={onClose}
      title={title}
      closeButtonProps={{ "aria-label": prose.close }}
      size="lg"
      centered
      transitionProps={{ duration: 0 }}
    >
      <form
        className="session-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          onKeep();
        }}
      >
        {children}
        {problem !== "" && (
          <p className="caution finding" role="alert">
            {problem}
          </p>
        )}
        <div className="form-buttons">
          <Button type="submit">{keep}</Button>
          <Button variant="default" onClick={onClose}>
            {prose.cancel}
          </Button>
        </div>
      </form>
    </Modal>
  );
}

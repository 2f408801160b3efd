import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import { words } from "../words/words.ts";

const prose = words.screens.traces;

interface ExcludeFormProps {
  readonly onExclude: (reason: string) => void;
  readonly onCancel: () => void;
}

/** Asks why a trial does not count. Escape and Cancel leave the trial as it is. */
export function ExcludeForm({ onExclude, onCancel }: ExcludeFormProps) {
  const [reason, setReason] = useState("");
  const [missing, setMissing] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  return (
    <form
      className="exclude-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() !== "") return onExclude(reason.trim());
        setMissing(true);
        field.current?.focus();
      }}
      onKeyDown={(press) => {
        if (press.key !== "Escape") return;
        press.preventDefault();
        onCancel();
      }}
    >
      <TextInput
        ref={field}
        label={prose.whyNotCounted}
        description={prose.whereTheReasonStands}
        size="xs"
        autoFocus
        value={reason}
        error={missing && prose.reasonMissing}
        onChange={(event) => {
          setReason(event.currentTarget.value);
          setMissing(false);
        }}
      />
      <div className="exclude-buttons">
        <Button type="submit" size="xs">
          {prose.exclude}
        </Button>
        <Button variant="default" size="xs" onClick={onCancel}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

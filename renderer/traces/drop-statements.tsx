import { Button, NativeSelect, Radio, TextInput } from "@mantine/core";
import { useId, useRef, useState } from "react";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { startsFromBox } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { boxHeightText } from "../../core/sides/box-height.ts";
import { limbRole } from "../shell/limb-role.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { dropAnswersFrom, writtenDrop } from "./drop-answers.ts";

const prose = words.screens.traceTables;

interface DropStatementsProps {
  readonly folder: string;
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
  /** The files of the trials listed with this one, itself included. */
  readonly alike: readonly string[];
}

/** The box a trial started from and the leg that led off it, and the way to state or change them; nothing elsewhere. */
export function DropStatements({ folder, trial, involved, alike }: DropStatementsProps) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  if (trial.test === undefined || !startsFromBox(trial.test)) return null;
  const { dropHeightMetres, leadingLeg, limb } = trial;
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  return (
    <div className="drop-statements">
      <p className="muted">
        {dropHeightMetres === undefined ? prose.heightOfBoxNotStated : prose.box(boxHeightText(dropHeightMetres))}
        {limb === "both" && " · "}
        {limb === "both" &&
          (leadingLeg === undefined ? (
            prose.leadingLegNotStated
          ) : (
            <>
              <span className={`limb-${limbRole(leadingLeg, involved)}`}>{leadingLeg}</span> {prose.legLedOff}
            </>
          ))}{" "}
        <button ref={button} type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {dropHeightMetres === undefined || (limb === "both" && leadingLeg === undefined)
            ? prose.stateItInLine
            : prose.change}
        </button>
      </p>
      {open && <DropForm folder={folder} trial={trial} alike={alike} onClose={close} />}
    </div>
  );
}

interface DropFormProps extends Omit<DropStatementsProps, "involved"> {
  readonly onClose: () => void;
}

function DropForm({ folder, trial, alike, onClose }: DropFormProps) {
  const { workspace, apply } = useWorkspace();
  const [before] = useState(() => writtenDrop(trial));
  /** What was said of the session when the form was opened. */
  const [said] = useState(workspace?.session?.description);
  const [written, setWritten] = useState(before);
  const [toAll, setToAll] = useState(false);
  const [problem, setProblem] = useState("");
  const name = useId();
  return (
    <form
      className="drop-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const outcome = dropAnswersFrom(written, before);
        if ("problem" in outcome) return setProblem(outcome.problem);
        onClose();
        const files = toAll ? alike : [trial.file];
        void apply("recordings.answer", { folder, files, answers: outcome.answers, ...(said && { before: said }) });
      }}
      onKeyDown={(press) => {
        if (press.key !== "Escape") return;
        press.preventDefault();
        onClose();
      }}
    >
      <TextInput
        label={prose.boxHeight}
        placeholder={prose.notStated}
        size="xs"
        inputMode="decimal"
        autoFocus
        value={written.height}
        onChange={(event) => setWritten({ ...written, height: event.currentTarget.value })}
      />
      {trial.limb === "both" && (
        <NativeSelect
          label={prose.legThatLedOff}
          size="xs"
          value={written.leadingLeg}
          onChange={(event) => {
            const leg = event.currentTarget.value;
            setWritten({ ...written, leadingLeg: leg === "left" || leg === "right" ? leg : "" });
          }}
          data={[
            { value: "", label: prose.notStated },
            { value: "left", label: prose.left },
            { value: "right", label: prose.right },
          ]}
        />
      )}
      {alike.length > 1 && (
        <fieldset className="answer-reach">
          <legend className="visually-hidden">{prose.whereThisHolds}</legend>
          <Radio
            size="xs"
            name={name}
            label={prose.forThisRecording}
            checked={!toAll}
            onChange={() => setToAll(false)}
          />
          <Radio
            size="xs"
            name={name}
            label={prose.forAllListed(alike.length)}
            checked={toAll}
            onChange={() => setToAll(true)}
          />
        </fieldset>
      )}
      <div className="drop-buttons">
        <Button type="submit" size="xs">
          {prose.stateIt}
        </Button>
        <Button variant="default" size="xs" onClick={onClose}>
          {prose.cancel}
        </Button>
      </div>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}

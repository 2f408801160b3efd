import { Button, NativeSelect, Radio, TextInput } from "@mantine/core";
import { useId, useState } from "react";
import { availableTests, testLabel } from "../../core/test-kind.ts";
import type { RecordingView } from "../../electron/host-api.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import {
  answersFrom,
  askedQuestions,
  type ColumnRole,
  columnRoles,
  forceUnits,
  nothingWritten,
  type Question,
  readRole,
} from "./answers.ts";

interface AnswersFormProps {
  readonly folder: string;
  readonly view: RecordingView;
  readonly asking: readonly string[];
}

const unchanged = { value: "", label: "as it is" };

/** Asks for what the file does not say. What is left open stays as it was read. */
export function AnswersForm({ folder, view, asking }: AnswersFormProps) {
  const { apply } = useWorkspace();
  const [written, setWritten] = useState(nothingWritten);
  const [toAll, setToAll] = useState(false);
  const [problem, setProblem] = useState("");
  const asked = askedQuestions(view);
  const columns = view.reading?.columns ?? [];
  const others = asking.filter((file) => file !== view.file);
  const label = (question: Question, words: string) => (asked.has(question) ? `${words} (asked for)` : words);

  const send = (event: React.FormEvent) => {
    event.preventDefault();
    const outcome = answersFrom(written, columns);
    if ("problem" in outcome) return setProblem(outcome.problem);
    setProblem("");
    setWritten(nothingWritten);
    const files = toAll ? [view.file, ...others] : [view.file];
    void apply("recordings.answer", { folder, files, answers: outcome.answers });
  };

  return (
    <form className="answers-form" onSubmit={send} noValidate>
      <h3>{asked.size > 0 ? "What this file does not say" : "State something else"}</h3>
      <div className="answer-fields">
        <NativeSelect
          label={label("test", "Test")}
          value={written.test}
          onChange={(event) => setWritten({ ...written, test: event.currentTarget.value })}
          data={[unchanged, ...availableTests.map((test) => ({ value: test, label: testLabel(test) }))]}
        />
        <NativeSelect
          label={label("limb", "Limb")}
          value={written.limb}
          onChange={(event) => setWritten({ ...written, limb: event.currentTarget.value })}
          data={[
            unchanged,
            { value: "both", label: "both legs" },
            { value: "left", label: "left leg" },
            { value: "right", label: "right leg" },
          ]}
        />
        <TextInput
          label={label("rate", "Rate in Hz")}
          inputMode="decimal"
          placeholder="as it is"
          value={written.rate}
          onChange={(event) => setWritten({ ...written, rate: event.currentTarget.value })}
        />
        <NativeSelect
          label={label("unit", "Unit of force")}
          value={written.unit}
          onChange={(event) => setWritten({ ...written, unit: event.currentTarget.value })}
          data={[unchanged, ...forceUnits.map((unit) => ({ value: unit, label: unit }))]}
        />
        <TextInput
          label="Height of the box, m"
          inputMode="decimal"
          placeholder="as it is"
          value={written.boxHeight}
          onChange={(event) => setWritten({ ...written, boxHeight: event.currentTarget.value })}
        />
        <NativeSelect
          label="Leg that led off the box"
          value={written.leadingLeg}
          onChange={(event) => setWritten({ ...written, leadingLeg: event.currentTarget.value })}
          data={[unchanged, { value: "left", label: "left" }, { value: "right", label: "right" }]}
        />
      </div>
      {columns.length > 0 && (
        <fieldset className="answer-fields">
          <legend>{label("columns", "Columns")}</legend>
          {columns.map((column) => (
            <NativeSelect
              key={column.position}
              label={`${column.position}${column.name === "" ? "" : `, ${column.name}`}`}
              value={written.roles.get(column.position) ?? readRole(column)}
              onChange={(event) => {
                const role = event.currentTarget.value as ColumnRole;
                setWritten({ ...written, roles: new Map(written.roles).set(column.position, role) });
              }}
              data={columnRoles.map((role) => ({ value: role, label: columnRoleWords[role] }))}
            />
          ))}
        </fieldset>
      )}
      {others.length > 0 && <ReachOfAnswer count={others.length} toAll={toAll} onChange={setToAll} />}
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      <Button type="submit" variant={asked.size > 0 ? "filled" : "default"}>
        State it
      </Button>
    </form>
  );
}

interface ReachOfAnswerProps {
  readonly count: number;
  readonly toAll: boolean;
  readonly onChange: (toAll: boolean) => void;
}

function ReachOfAnswer({ count, toAll, onChange }: ReachOfAnswerProps) {
  const name = useId();
  return (
    <fieldset className="answer-reach">
      <legend className="visually-hidden">Where the answer holds</legend>
      <Radio size="xs" name={name} label="for this file" checked={!toAll} onChange={() => onChange(false)} />
      <Radio
        size="xs"
        name={name}
        label={`for this file and the ${count === 1 ? "other one that asks" : `${count} others that ask`}`}
        checked={toAll}
        onChange={() => onChange(true)}
      />
    </fieldset>
  );
}

const columnRoleWords: Readonly<Record<ColumnRole, string>> = {
  unused: "not used",
  time: "time",
  left: "force of the left foot",
  right: "force of the right foot",
  total: "total force",
};

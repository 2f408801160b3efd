import { Button, Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useId, useState } from "react";
import type { WrittenKind, WrittenRecord } from "../../electron/boundary/record-requests.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { contentFrom, type RecordField, recordFields, unknownDate, writtenFields } from "./record-fields.ts";

const prose = words.screens.recordFields;

interface RecordFormProps {
  readonly kind: WrittenKind;
  readonly title: string;
  /** Whose it is; absent for an athlete. */
  readonly athlete?: string;
  /** The record that is changed; absent: a new one. */
  readonly record?: { readonly id: string; readonly content: object };
  /** What a new one begins with. */
  readonly defaults?: object;
  /** With the record's identifier after it was kept. */
  readonly onDone: (id: string) => void;
  readonly onCancel: () => void;
}

/** Asks for one record of an athlete and keeps it. */
export function RecordForm({ kind, title, athlete, record, defaults, onDone, onCancel }: RecordFormProps) {
  const { apply } = useWorkspace();
  /** As it was when the form began: what changed elsewhere since is not what this form starts from. */
  const [begun] = useState(record);
  const [written, setWritten] = useState(() => writtenFields(kind, record?.content ?? defaults ?? {}));
  const [problem, setProblem] = useState("");
  const titleId = useId();
  const keep = async () => {
    const outcome = contentFrom(kind, written, begun?.content ?? {});
    if ("problem" in outcome) return setProblem(outcome.problem);
    setProblem("");
    const id = begun?.id ?? crypto.randomUUID();
    const owner = athlete === undefined ? {} : { athlete };
    // The contents were made from the fields of this very kind.
    const kept = { kind, id, ...owner, content: outcome.content } as WrittenRecord;
    const before = begun === undefined ? {} : { before: begun.content as WrittenRecord["content"] };
    if (await apply("records.save", { record: kept, ...before })) onDone(id);
  };
  return (
    <form
      className="panel panel-padded session-form"
      aria-labelledby={titleId}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <h2 id={titleId} className="panel-title">
        {title}
      </h2>
      <div className="answer-fields">
        {recordFields[kind].map((field) => (
          <Field
            key={field.name}
            field={field}
            note={record !== undefined && written[field.name] === "" ? (field.whileNotStated ?? "") : ""}
            value={written[field.name] ?? ""}
            onChange={(value) => setWritten({ ...written, [field.name]: value })}
          />
        ))}
      </div>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      <div className="form-buttons">
        <Button type="submit">{prose.keep}</Button>
        <Button variant="default" onClick={onCancel}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly field: RecordField;
  /** What to know about it; empty where there is nothing. */
  readonly note: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function Field({ field, note, value, onChange }: FieldProps) {
  const { label, type, options = [], required, orUnknown, wide } = field;
  const common = {
    label,
    value,
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) => onChange(event.currentTarget.value),
    ...(wide && { className: "answer-wide" }),
    ...(note !== "" && { description: note }),
  };
  if (type === "choice") {
    return (
      <NativeSelect
        {...common}
        data={[
          ...(required && value !== "" ? [] : [{ value: "", label: prose.notStated }]),
          ...options.map(([each, shown]) => ({ value: each, label: shown })),
        ]}
      />
    );
  }
  if (orUnknown) {
    const isUnknown = value === unknownDate;
    return (
      <div className="date-or-unknown">
        <TextInput {...common} type="date" value={isUnknown ? "" : value} disabled={isUnknown} />
        <Checkbox
          label={prose.isNotKnown(label)}
          checked={isUnknown}
          onChange={(event) => onChange(event.currentTarget.checked ? unknownDate : "")}
        />
      </div>
    );
  }
  const input = type === "date" ? { type: "date" } : type === "number" ? { inputMode: "decimal" as const } : {};
  return <TextInput {...common} {...input} />;
}

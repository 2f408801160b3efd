import { Button, Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { shippedProtocol, shippedProtocols } from "../../core/protocol/shipped-protocols.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { CautionFields } from "./caution-fields.tsx";
import { answeredCautions, noAnswers } from "./caution-questions.ts";
import { meantNow, today } from "./dates.ts";
import { ProtocolTable } from "./protocol-table.tsx";
import { conditionFields, planFrom, plannedFrom, type WrittenPlan } from "./session-plan.ts";

interface StartSessionFormProps {
  readonly page: AthletePage;
  readonly onDone: () => void;
  readonly onCancel: () => void;
}

/** Begins the next session: what is tested, under which conditions, and the cautions asked first. */
export function StartSessionForm({ page, onDone, onCancel }: StartSessionFormProps) {
  const { apply } = useWorkspace();
  const [written, setWritten] = useState<WrittenPlan>(() => plannedFrom(page, today()));
  const [answers, setAnswers] = useState(() => noAnswers(""));
  const [later, setLater] = useState(false);
  const [problem, setProblem] = useState("");
  const protocol = shippedProtocol(written.protocol);
  const field = (name: Exclude<keyof WrittenPlan, "conditions">) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      setWritten({ ...written, [name]: event.currentTarget.value }),
  });
  const start = async () => {
    const planned = planFrom(written, page);
    if ("problem" in planned) return setProblem(planned.problem);
    const meant = meantNow(planned.plan.date);
    const answered = later ? undefined : answeredCautions(answers, { asking: "session", injured: true, meant });
    if (answered !== undefined && "problem" in answered) return setProblem(answered.problem);
    setProblem("");
    const plan = {
      ...planned.plan,
      ...(answered !== undefined && { cautions: answered.addition }),
    };
    const session = crypto.randomUUID();
    if (await apply("sessions.start", { session, athlete: page.athlete.id, plan })) onDone();
  };
  return (
    <form
      className="panel panel-padded session-form"
      aria-labelledby="start-title"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void start();
      }}
    >
      <h2 id="start-title" className="panel-title">
        The next session of {page.athlete.content.name ?? page.athlete.content.code}
      </h2>
      <div className="answer-fields">
        <TextInput label="Date" type="date" {...field("date")} />
        <TextInput label="Milestone" placeholder="month 7" {...field("milestone")} />
        <TextInput label="Body mass, kg" inputMode="decimal" {...field("mass")} />
        <TextInput label="Place" {...field("place")} />
        <TextInput label="Tester" {...field("tester")} />
        <NativeSelect
          className="answer-wide"
          label="Protocol"
          {...field("protocol")}
          data={[
            { value: "", label: "none: nothing is counted against it" },
            ...shippedProtocols.map(({ id, name, stage }) => ({ value: id, label: `${stage}: ${name}` })),
          ]}
        />
      </div>
      {protocol !== undefined && <ProtocolTable protocol={protocol} />}
      <fieldset className="form-part">
        <legend className="small-title">Cautions before jumping after knee surgery</legend>
        <Checkbox
          label="They are asked later, before the first jump; until then no status is given"
          checked={later}
          onChange={(event) => setLater(event.currentTarget.checked)}
        />
        {!later && <CautionFields asking="session" injured written={answers} onChange={setAnswers} />}
      </fieldset>
      <details className="form-part">
        <summary>Conditions, as last time unless changed</summary>
        <div className="answer-fields">
          {conditionFields.map(({ name, label, type }) => {
            const common = {
              label,
              value: written.conditions[name],
              onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
                setWritten({
                  ...written,
                  conditions: { ...written.conditions, [name]: event.currentTarget.value },
                }),
            };
            return type === "yesNo" ? (
              <NativeSelect
                key={name}
                {...common}
                data={[
                  { value: "", label: "not stated" },
                  { value: "no", label: "no" },
                  { value: "yes", label: "yes" },
                ]}
              />
            ) : (
              <TextInput key={name} {...common} inputMode={type === "number" ? "decimal" : "text"} />
            );
          })}
        </div>
      </details>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      <div className="form-buttons">
        <Button type="submit">Begin the session</Button>
        <Button variant="default" onClick={onCancel}>
          Cancel
        </Button>
      </div>
    </form>
  );
}

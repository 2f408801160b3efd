import { Button, Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { shippedProtocol, shippedProtocols } from "../../core/protocol/shipped-protocols.ts";
import type { CautionAddition } from "../../electron/cautions/caution-addition.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { AnswerFields } from "../cautions/answer-fields.tsx";
import { answeredCautions, noAnswers } from "../cautions/answers.ts";
import { lastResponseQuestion } from "../cautions/last-response.ts";
import { meantNow } from "../cautions/moments.ts";
import { involvedSides } from "../recordings/session-answers.ts";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { today } from "../shell/dates.ts";
import { involvedWords, sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { ProtocolTable } from "./protocol-table.tsx";
import {
  conditionFields,
  involvedInRegister,
  isInjured,
  lastAnsweredBy,
  planFrom,
  plannedFrom,
  type WrittenPlan,
} from "./session-plan.ts";

const prose = words.screens.protocols;

interface StartSessionFormProps {
  readonly page: AthletePage;
  readonly onDone: () => void;
  readonly onCancel: () => void;
}

/** Begins the next session: what is tested, under which conditions, and the cautions asked first. */
export function StartSessionForm({ page, onDone, onCancel }: StartSessionFormProps) {
  const { apply } = useWorkspace();
  const [written, setWritten] = useState<WrittenPlan>(() => plannedFrom(page, today()));
  const [answers, setAnswers] = useState(() => noAnswers(carriedName(lastAnsweredBy(page))));
  const [later, setLater] = useState(false);
  const [response, setResponse] = useState("");
  const [problem, setProblem] = useState("");
  const protocol = shippedProtocol(written.protocol);
  const injured = isInjured(written, page);
  const question = injured ? lastResponseQuestion(page, written.date) : "";
  const field = (name: Exclude<keyof WrittenPlan, "conditions">) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      setWritten({ ...written, [name]: event.currentTarget.value }),
  });
  const start = async () => {
    const planned = planFrom(written, page);
    if ("problem" in planned) return setProblem(planned.problem);
    const meant = meantNow(planned.plan.date);
    const note = response.trim();
    if (question !== "" && note === "") return setProblem(prose.notAnsweredYet(question));
    const by = answers.by.trim();
    if (question !== "" && by === "") return setProblem(prose.sayWhoAnswered);
    const answered = later ? undefined : answeredCautions(answers, { asking: "session", injured, meant });
    if (answered !== undefined && "problem" in answered) return setProblem(answered.problem);
    setProblem("");
    carryName(by);
    const cautions: CautionAddition = {
      ...answered?.addition,
      ...(question !== "" && { response: { meant, by, note: `${question} ${note}` } }),
    };
    const plan = {
      ...planned.plan,
      ...(Object.keys(cautions).length > 0 && { cautions }),
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
        {prose.nextSession(page.athlete.content.name ?? page.athlete.content.code)}
      </h2>
      <div className="answer-fields">
        <TextInput label={prose.date} type="date" {...field("date")} />
        <TextInput label={prose.milestone} placeholder={prose.month7} {...field("milestone")} />
        <TextInput label={prose.bodyMass} inputMode="decimal" {...field("mass")} />
        <TextInput label={prose.place} {...field("place")} />
        <TextInput
          label={prose.tester}
          value={written.tester}
          onChange={(event) => {
            const tester = event.currentTarget.value;
            // Whoever tests usually answers too, until another name is written there.
            if (answers.by === "" || answers.by === written.tester) setAnswers({ ...answers, by: tester });
            setWritten({ ...written, tester });
          }}
        />
        {involvedInRegister(page, written.date) === undefined && (
          <NativeSelect
            label={prose.involvedSide}
            {...field("involved")}
            data={[
              { value: "", label: prose.notStated },
              ...involvedSides.map((side) => ({ value: side, label: sentenceCase(involvedWords(side)) })),
            ]}
          />
        )}
        <NativeSelect
          className="answer-wide"
          label={prose.protocol}
          {...field("protocol")}
          data={[
            { value: "", label: prose.noProtocol },
            ...shippedProtocols.map(({ id, name, stage }) => ({ value: id, label: `${stage}: ${name}` })),
          ]}
        />
      </div>
      {protocol !== undefined && <ProtocolTable protocol={protocol} />}
      <fieldset className="form-part">
        <legend className="small-title">{injured ? prose.cautionsAfterSurgery : prose.cautionsBefore}</legend>
        {question !== "" && (
          <TextInput
            className="last-response"
            label={question}
            description={prose.answerOnTheSheet}
            value={response}
            onChange={(event) => setResponse(event.currentTarget.value)}
          />
        )}
        <Checkbox
          label={prose.askedLater}
          checked={later}
          onChange={(event) => setLater(event.currentTarget.checked)}
        />
        {!later && <AnswerFields asking="session" injured={injured} written={answers} onChange={setAnswers} />}
        {later && question !== "" && (
          <TextInput
            label={prose.answeredBy}
            value={answers.by}
            onChange={(event) => setAnswers({ ...answers, by: event.currentTarget.value })}
          />
        )}
      </fieldset>
      <details className="form-part">
        <summary>{prose.conditions}</summary>
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
                  { value: "", label: prose.notStated },
                  { value: "no", label: prose.no },
                  { value: "yes", label: prose.yes },
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
        <Button type="submit">{prose.beginSession}</Button>
        <Button variant="default" onClick={onCancel}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

import { NativeSelect, Radio, TextInput } from "@mantine/core";
import { cautionQuestions } from "../../core/gate/caution-questions.ts";
import { effusionGrades } from "../../core/stated/gate-words.ts";
import { AssessmentNow } from "../shell/assessment-now.tsx";
import { type Asking, askedIn, questionsOf, spokenAgainst, type WrittenAnswers } from "./answers.ts";

interface AnswerFieldsProps {
  readonly asking: Asking;
  /** False where it was stated that nobody is injured: fewer questions. */
  readonly injured: boolean;
  readonly written: WrittenAnswers;
  readonly onChange: (written: WrittenAnswers) => void;
}

/** The cautions before jumping after knee surgery, to be asked and answered; nothing is answered beforehand. */
export function AnswerFields({ asking, injured, written, onChange }: AnswerFieldsProps) {
  const field = (name: Exclude<keyof WrittenAnswers, "questions">) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      onChange({ ...written, [name]: event.currentTarget.value }),
  });
  const names = questionsOf(asking, injured);
  const against = spokenAgainst(written).filter((name) => names.includes(name));
  return (
    <>
      <div className="caution-fields">
        <TextInput
          label={injured ? "Pain now in the involved knee, 0 to 10" : "Pain now in either leg, 0 to 10"}
          inputMode="decimal"
          {...field("pain")}
        />
        {injured && (
          <NativeSelect
            label={asking === "session" ? "Effusion now" : "Swelling now, as effusion"}
            {...field("effusion")}
            data={[{ value: "", label: "not answered" }, ...effusionGrades]}
          />
        )}
        {names.map((name) => (
          <Radio.Group
            key={name}
            className="caution-question"
            label={askedIn(asking, name)}
            value={written.questions[name] ?? ""}
            onChange={(answer) => onChange({ ...written, questions: { ...written.questions, [name]: answer } })}
          >
            <div className="caution-choices">
              <Radio value="no" label="no" />
              <Radio value="yes" label="yes" />
            </div>
          </Radio.Group>
        ))}
        {written.questions.restriction === "yes" && (
          <TextInput className="answer-wide" label="The restriction in the surgeon's words" {...field("restriction")} />
        )}
        {asking === "session" && injured && (
          <>
            <TextInput label="Pain in the other leg, if any, 0 to 10" inputMode="decimal" {...field("otherLeg")} />
            <TextInput label="Pain elsewhere, if any, 0 to 10" inputMode="decimal" {...field("elsewhere")} />
          </>
        )}
        <TextInput label="Answered by" {...field("by")} />
        {asking === "session" && <TextInput label="Note on the answers, if wanted" {...field("note")} />}
      </div>
      <div role="status" className="caution-outcome">
        {against.some((name) => cautionQuestions[name].stopsForAssessment) && <AssessmentNow />}
        {against.length > 0 && (
          <p className="caution finding">
            Speaks against jumping: {against.map((name) => cautionQuestions[name].words).join("; ")}. Jump tests
            concerned are closed for the day unless the treating clinician opens them with a reason; the surgeon's
            restrictions come first.
          </p>
        )}
      </div>
    </>
  );
}

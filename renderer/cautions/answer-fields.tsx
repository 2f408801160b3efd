import { NativeSelect, Radio, TextInput } from "@mantine/core";
import { cautionQuestions } from "../../core/gate/caution-questions.ts";
import { effusionGrades } from "../../core/stated/gate-words.ts";
import { AssessmentNow } from "../shell/assessment-now.tsx";
import { words } from "../words/words.ts";
import { type Asking, askedIn, questionsOf, spokenAgainst, type WrittenAnswers } from "./answers.ts";

const prose = words.screens.cautions;

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
          label={injured ? prose.painInvolvedKnee : prose.painEitherLeg}
          inputMode="decimal"
          {...field("pain")}
        />
        {injured && (
          <NativeSelect
            label={asking === "session" ? prose.effusionNow : prose.swellingNow}
            {...field("effusion")}
            data={[{ value: "", label: prose.notAnswered }, ...effusionGrades]}
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
              <Radio value="no" label={prose.no} />
              <Radio value="yes" label={prose.yes} />
            </div>
          </Radio.Group>
        ))}
        {written.questions.restriction === "yes" && (
          <TextInput className="answer-wide" label={prose.restriction} {...field("restriction")} />
        )}
        {asking === "session" && injured && (
          <>
            <TextInput label={prose.painOtherLeg} inputMode="decimal" {...field("otherLeg")} />
            <TextInput label={prose.painElsewhere} inputMode="decimal" {...field("elsewhere")} />
          </>
        )}
        <TextInput label={prose.answeredBy} {...field("by")} />
        {asking === "session" && <TextInput label={prose.noteOnAnswers} {...field("note")} />}
      </div>
      <div role="status" className="caution-outcome">
        {against.some((name) => cautionQuestions[name].stopsForAssessment) && <AssessmentNow />}
        {against.length > 0 && (
          <p className="caution finding">
            {prose.speaksAgainst(against.map((name) => cautionQuestions[name].words).join("; "))}
          </p>
        )}
      </div>
    </>
  );
}

import { NativeSelect, TextInput } from "@mantine/core";
import { cautionQuestions } from "../../core/gate/caution-questions.ts";
import { medicalAssessmentNow } from "../../core/gate/closures.ts";
import { effusionGrades } from "../../core/gate/gate-schema.ts";
import { type Asking, questionsOf, spokenAgainst, type WrittenAnswers } from "./caution-questions.ts";

interface CautionFieldsProps {
  readonly asking: Asking;
  /** False where it was stated that nobody is injured: fewer questions. */
  readonly injured: boolean;
  readonly written: WrittenAnswers;
  readonly onChange: (written: WrittenAnswers) => void;
}

const choices = [
  { value: "", label: "not answered" },
  { value: "no", label: "no" },
  { value: "yes", label: "yes" },
];

/** The cautions before jumping after knee surgery, to be asked and answered; nothing is answered beforehand. */
export function CautionFields({ asking, injured, written, onChange }: CautionFieldsProps) {
  const field = (name: Exclude<keyof WrittenAnswers, "questions">) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      onChange({ ...written, [name]: event.currentTarget.value }),
  });
  const names = questionsOf(asking, injured);
  const against = spokenAgainst(written).filter((name) => names.includes(name));
  const assess = against.some((name) => cautionQuestions[name].stopsForAssessment);
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
          <NativeSelect
            key={name}
            label={
              asking === "change" && name === "givingWay"
                ? "Has the knee given way today?"
                : cautionQuestions[name].question
            }
            value={written.questions[name] ?? ""}
            onChange={(event) =>
              onChange({ ...written, questions: { ...written.questions, [name]: event.currentTarget.value } })
            }
            data={choices}
          />
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
      {against.length > 0 && (
        <p className="caution finding" role="status">
          {assess && <strong>{medicalAssessmentNow} </strong>}
          Speaks against jumping: {against.map((name) => cautionQuestions[name].words).join("; ")}. Jump tests concerned
          are closed for the day unless the treating clinician opens them with a reason; the surgeon's restrictions come
          first.
        </p>
      )}
    </>
  );
}

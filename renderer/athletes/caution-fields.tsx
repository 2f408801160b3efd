import { NativeSelect, TextInput } from "@mantine/core";
import { effusionGrades } from "../../core/session.ts";
import { affirmed, type WrittenAnswers, yesNoQuestions } from "./caution-questions.ts";

interface CautionFieldsProps {
  readonly written: WrittenAnswers;
  readonly onChange: (written: WrittenAnswers) => void;
}

/** The cautions before jumping after knee surgery, to be asked and answered. */
export function CautionFields({ written, onChange }: CautionFieldsProps) {
  const field = (name: keyof WrittenAnswers) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      onChange({ ...written, [name]: event.currentTarget.value }),
  });
  const yes = affirmed(written);
  return (
    <>
      <div className="caution-fields">
        <TextInput label="Pain now, 0 to 10" inputMode="decimal" {...field("pain")} />
        <NativeSelect
          label="Effusion now"
          {...field("effusion")}
          data={[{ value: "", label: "not answered" }, ...effusionGrades]}
        />
        {yesNoQuestions.map(({ name, question }) => (
          <NativeSelect
            key={name}
            label={question}
            {...field(name)}
            data={[
              { value: "", label: "not answered" },
              { value: "no", label: "no" },
              { value: "yes", label: "yes" },
            ]}
          />
        ))}
        <TextInput label="Answered by" {...field("answeredBy")} />
        <TextInput label="Note on the answers, if wanted" {...field("note")} />
      </div>
      {yes.length > 0 && (
        <p className="caution finding" role="status">
          Answered with yes: {yes.join(" ")} Decide with the athlete whether to jump today; the surgeon's restrictions
          come first. A session can be stopped with a reason at any time.
        </p>
      )}
    </>
  );
}

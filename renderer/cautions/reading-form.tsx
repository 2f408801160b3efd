import { NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { effusionGrades, readingMoments } from "../../core/stated/gate-words.ts";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { FormDialog } from "./form-dialog.tsx";
import { momentWords } from "./moments.ts";
import { noReading, readingFrom, type WrittenReading } from "./written-reading.ts";

const prose = words.screens.cautionForms;

interface ReadingFormProps {
  readonly session: SessionResult;
  /** The day of the session; a reading of no day counts for none. */
  readonly date: string;
  /** Who tests, where that is known. */
  readonly tester?: string;
  readonly onClose: () => void;
}

/** One more reading of pain, effusion or both; it joins those that are there and takes none away. */
export function ReadingForm({ session, date, tester, onClose }: ReadingFormProps) {
  const { apply } = useWorkspace();
  const { description, gate, folder } = session;
  const by = gate.day.readings.at(-1)?.by ?? gate.answered.given.at(-1)?.by;
  const [written, setWritten] = useState<WrittenReading>(() => noReading(date, carriedName(by, tester)));
  const [problem, setProblem] = useState("");
  const injured = description.involved !== "none";
  const field = (name: keyof WrittenReading) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      setWritten({ ...written, [name]: event.currentTarget.value }),
  });
  const keep = async () => {
    const read = readingFrom(written, date);
    if ("problem" in read) return setProblem(read.problem);
    setProblem("");
    carryName(written.by);
    if (await apply("cautions.add", { folder, addition: read.addition })) onClose();
  };
  return (
    <FormDialog
      title={prose.readingOfTheKnee}
      keep={prose.keepReading}
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      <div className="caution-fields">
        <NativeSelect
          label={prose.momentOfSession}
          {...field("moment")}
          data={[
            { value: "", label: prose.choose },
            ...readingMoments.map((moment) => ({ value: moment, label: sentenceCase(momentWords[moment]) })),
          ]}
        />
        {written.moment === "nextDay" && <TextInput label={prose.dayOfReading} type="date" {...field("day")} />}
        <TextInput label={prose.timeOfDayIfKnown} type="time" {...field("clock")} />
        <TextInput label={prose.pain} inputMode="decimal" {...field("pain")} />
        <NativeSelect
          label={prose.whereItHurts}
          {...field("where")}
          data={
            injured
              ? [
                  { value: "knee", label: prose.involvedKnee },
                  { value: "other leg", label: prose.otherLeg },
                  { value: "elsewhere", label: prose.elsewhere },
                ]
              : [
                  { value: "knee", label: prose.eitherLeg },
                  { value: "elsewhere", label: prose.elsewhere },
                ]
          }
        />
        {injured && (
          <NativeSelect
            label={prose.effusionInvolvedKnee}
            {...field("effusion")}
            data={[{ value: "", label: prose.notRead }, ...effusionGrades]}
          />
        )}
        <TextInput label={prose.readBy} {...field("by")} />
      </div>
      <p className="muted">{prose.readingsAreKept}</p>
    </FormDialog>
  );
}

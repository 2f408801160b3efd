import { NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { effusionGrades, readingMoments } from "../../core/stated/gate-words.ts";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { FormDialog } from "./form-dialog.tsx";
import { momentWords } from "./moments.ts";
import { noReading, readingFrom, type WrittenReading } from "./written-reading.ts";

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
      title="A reading of the knee"
      keep="Keep the reading"
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      <div className="caution-fields">
        <NativeSelect
          label="Moment of the session"
          {...field("moment")}
          data={[
            { value: "", label: "choose" },
            ...readingMoments.map((moment) => ({ value: moment, label: sentenceCase(momentWords[moment]) })),
          ]}
        />
        {written.moment === "nextDay" && <TextInput label="Day of the reading" type="date" {...field("day")} />}
        <TextInput label="Time of day, if known" type="time" {...field("clock")} />
        <TextInput label="Pain, 0 to 10" inputMode="decimal" {...field("pain")} />
        <NativeSelect
          label="Where it hurts"
          {...field("where")}
          data={
            injured
              ? [
                  { value: "knee", label: "the involved knee" },
                  { value: "other leg", label: "the other leg" },
                  { value: "elsewhere", label: "elsewhere" },
                ]
              : [
                  { value: "knee", label: "either leg" },
                  { value: "elsewhere", label: "elsewhere" },
                ]
          }
        />
        {injured && (
          <NativeSelect
            label="Effusion of the involved knee"
            {...field("effusion")}
            data={[{ value: "", label: "not read" }, ...effusionGrades]}
          />
        )}
        <TextInput label="Read by" {...field("by")} />
      </div>
      <p className="muted">
        Readings are kept for good. The worst of before, during and after counts for the day, whatever is read later;
        the next day's changes nothing about the day of the jumps.
      </p>
    </FormDialog>
  );
}

import { Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { decimalMarkWords } from "../../core/recording/decimal-mark-words.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import { readerWords } from "../../core/recording/reader-words.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { RecordingAnswers } from "../../electron/boundary/host-api.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import {
  askedQuestions,
  type ColumnRole,
  columnRoles,
  columnsAnswer,
  forceUnits,
  type Question,
  rateFrom,
  readRole,
} from "./answers.ts";
import { rateWords, unitWords } from "./reading-words.ts";

interface ReadingFormProps {
  readonly view: RecordingView;
  readonly reading: FileReading;
  /** What was stated about the file as a whole. */
  readonly stated: Partial<FileEntry>;
  readonly onAnswer: (answers: RecordingAnswers) => void;
}

/** How the file was read, each decision with its reason; all of it can be changed, and the trace follows at once. */
export function ReadingForm({ view, reading, stated, onAnswer }: ReadingFormProps) {
  const asked = askedQuestions(view);
  const label = (question: Question, words: string) => (asked.has(question) ? `${words} (asked for)` : words);
  const feet = reading.columns.filter((column) => column.limb === "left" || column.limb === "right");
  const mark = reading.kind === "delimited" ? decimalMarkWords(reading.decimalMark, reading.columns) : undefined;
  return (
    <div className="reading-form">
      <table className="columns-table">
        <caption className="visually-hidden">How each column was read, and why</caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              No.
            </th>
            <th scope="col">{readerWords[reading.kind].part}</th>
            <th scope="col">{label("columns", "Read as")}</th>
            <th scope="col">Unit</th>
            <th scope="col">How sure, and why</th>
          </tr>
        </thead>
        <tbody>
          {reading.columns.map((column) => (
            <tr key={column.position}>
              <td className="number">{column.position}</td>
              <td>{column.name === "" ? "–" : column.name}</td>
              <td>
                <NativeSelect
                  size="xs"
                  aria-label={`Column ${column.position}${column.name === "" ? "" : `, ${column.name}`}, is`}
                  value={readRole(column)}
                  onChange={(event) => {
                    const role = columnRoles.find((each) => each === event.currentTarget.value);
                    if (role !== undefined) {
                      onAnswer({ columns: columnsAnswer(reading.columns, column.position, role) });
                    }
                  }}
                  data={[
                    ...(readRole(column) === "unclear" ? [{ value: "unclear", label: "not used: what is it?" }] : []),
                    ...columnRoles
                      .filter((role) => role !== "time" || readerWords[reading.kind].hasTimeColumn)
                      .map((role) => ({ value: role, label: columnRoleWords[role] })),
                  ]}
                />
              </td>
              <td>{column.unit === "" ? "–" : column.unit}</td>
              <td className={column.confidence === "unclear" ? "caution" : "muted"}>
                {column.confidence}: {column.reason}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {stated.columns !== undefined && (
        <button type="button" className="text-button" onClick={() => onAnswer({ columns: null })}>
          Read the columns as they are recognised
        </button>
      )}
      <div className="answer-fields">
        <RateField
          key={`rate ${reading.rateHz ?? ""}`}
          label={label("rate", "Rate, Hz")}
          description={rateWords(reading)}
          before={reading.rateHz === undefined ? "" : String(reading.rateHz)}
          onState={(rateHz) => onAnswer({ rateHz })}
        />
        <NativeSelect
          label={label("unit", "Unit of force")}
          description={unitWords(reading)}
          value={stated.unit ?? ""}
          onChange={(event) =>
            onAnswer({ unit: forceUnits.find((each) => each === event.currentTarget.value) ?? null })
          }
          data={[
            { value: "", label: `as recognised${recognisedUnit(reading, stated)}` },
            ...forceUnits.map((unit) => ({ value: unit, label: unit })),
          ]}
        />
        {mark !== undefined && (
          <NativeSelect
            label={label("decimalMark", "Decimal mark")}
            description={`read as ${mark}${stated.decimalMark === undefined ? ", from the numbers" : ", stated"}`}
            value={stated.decimalMark ?? ""}
            onChange={(event) => {
              const chosen = event.currentTarget.value;
              onAnswer({ decimalMark: chosen === "point" || chosen === "comma" ? chosen : null });
            }}
            data={[
              { value: "", label: "as recognised" },
              { value: "point", label: "point" },
              { value: "comma", label: "comma" },
            ]}
          />
        )}
        {reading.kind === "delimited" && (
          <RateField
            key={`resample ${stated.resampleHz ?? ""}`}
            label="Rate of an even time base, Hz"
            description={
              reading.resampledFromHz === undefined
                ? "as sampled"
                : `resampled from ${Number(reading.resampledFromHz.toFixed(3))} Hz`
            }
            before={stated.resampleHz === undefined ? "" : String(stated.resampleHz)}
            onState={(resampleHz) => onAnswer({ resampleHz })}
          />
        )}
      </div>
      <div className="answer-checks">
        {(feet.length > 1 || stated.swapPlates !== undefined) && (
          <Checkbox
            size="xs"
            label="The feet stood on each other's plates: exchange left and right"
            checked={stated.swapPlates ?? false}
            onChange={(event) => onAnswer({ swapPlates: event.currentTarget.checked ? true : null })}
          />
        )}
        {reading.kind === "delimited" && (
          <Checkbox
            size="xs"
            label={label("resample", "Put the samples on an even time base; never across a gap")}
            checked={stated.resample ?? stated.resampleHz !== undefined}
            onChange={(event) =>
              onAnswer(event.currentTarget.checked ? { resample: true } : { resample: null, resampleHz: null })
            }
          />
        )}
      </div>
    </div>
  );
}

/** The unit that would be used if nobody stated one; nothing where a statement hides it. */
function recognisedUnit({ forceUnit }: FileReading, stated: Partial<FileEntry>): string {
  return forceUnit === undefined || stated.unit !== undefined ? "" : `: ${forceUnit}`;
}

interface RateFieldProps {
  readonly label: string;
  readonly description: string;
  readonly before: string;
  readonly onState: (rateHz: number | null) => void;
}

/** Stated when the field is left or Enter is pressed; emptied, it takes the statement back. */
function RateField({ label, description, before, onState }: RateFieldProps) {
  const [written, setWritten] = useState(before);
  const [problem, setProblem] = useState("");
  const send = () => {
    if (written.trim() === before) return;
    const rate = rateFrom(written);
    if ("problem" in rate) return setProblem(rate.problem);
    setProblem("");
    onState(rate.rateHz);
  };
  return (
    <TextInput
      label={label}
      description={description}
      inputMode="decimal"
      value={written}
      error={problem === "" ? undefined : problem}
      onChange={(event) => setWritten(event.currentTarget.value)}
      onBlur={send}
      onKeyDown={(event) => {
        if (event.key === "Enter") send();
      }}
    />
  );
}

const columnRoleWords: Readonly<Record<ColumnRole, string>> = {
  unused: "not used",
  time: "time",
  left: "force, left foot",
  right: "force, right foot",
  total: "force, total",
};

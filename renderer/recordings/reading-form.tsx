import { Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { decimalMarkWords } from "../../core/recording/decimal-mark-words.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import { readerWords } from "../../core/recording/reader-words.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { RecordingAnswers } from "../../electron/boundary/stated-changes.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
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

const prose = words.screens.recordingReading;

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
  const label = (question: Question, words: string) => (asked.has(question) ? prose.askedFor(words) : words);
  const feet = reading.columns.filter((column) => column.limb === "left" || column.limb === "right");
  const mark = reading.kind === "delimited" ? decimalMarkWords(reading.decimalMark, reading.columns) : undefined;
  return (
    <div className="reading-form">
      <table className="columns-table">
        <caption className="visually-hidden">{prose.howColumnsWereRead}</caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              {prose.number}
            </th>
            <th scope="col">{readerWords[reading.kind].part}</th>
            <th scope="col">{label("columns", prose.readAs)}</th>
            <th scope="col">{prose.unit}</th>
            <th scope="col">{prose.howSureAndWhy}</th>
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
                  aria-label={prose.columnIs(column.position, column.name === "" ? "" : `, ${column.name}`)}
                  value={readRole(column)}
                  onChange={(event) => {
                    const role = columnRoles.find((each) => each === event.currentTarget.value);
                    if (role !== undefined) {
                      onAnswer({ columns: columnsAnswer(reading.columns, column.position, role) });
                    }
                  }}
                  data={[
                    ...(readRole(column) === "unclear" ? [{ value: "unclear", label: prose.notUsedWhat }] : []),
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
          {prose.readAsRecognised}
        </button>
      )}
      <div className="answer-fields">
        <RateField
          key={`rate ${reading.rateHz ?? ""}`}
          label={label("rate", prose.rateHz)}
          description={rateWords(reading)}
          before={reading.rateHz === undefined ? "" : String(reading.rateHz)}
          onState={(rateHz) => onAnswer({ rateHz })}
        />
        <NativeSelect
          label={label("unit", prose.unitOfForce)}
          description={unitWords(reading)}
          value={stated.unit ?? ""}
          onChange={(event) =>
            onAnswer({ unit: forceUnits.find((each) => each === event.currentTarget.value) ?? null })
          }
          data={[
            { value: "", label: prose.asRecognisedUnit(recognisedUnit(reading, stated)) },
            ...forceUnits.map((unit) => ({ value: unit, label: unit })),
          ]}
        />
        {mark !== undefined && (
          <NativeSelect
            label={label("decimalMark", prose.decimalMark)}
            description={prose.readAsMark(
              mark,
              stated.decimalMark === undefined ? prose.fromNumbersBehind : prose.statedBehind,
            )}
            value={stated.decimalMark ?? ""}
            onChange={(event) => {
              const chosen = event.currentTarget.value;
              onAnswer({ decimalMark: chosen === "point" || chosen === "comma" ? chosen : null });
            }}
            data={[
              { value: "", label: prose.asRecognised },
              { value: "point", label: prose.point },
              { value: "comma", label: prose.comma },
            ]}
          />
        )}
        {reading.kind === "delimited" && (
          <RateField
            key={`resample ${stated.resampleHz ?? ""}`}
            label={prose.rateOfEvenTimeBase}
            description={
              reading.resampledFromHz === undefined
                ? prose.asSampled
                : prose.resampledFrom(Number(reading.resampledFromHz.toFixed(3)))
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
            label={prose.exchangeFeet}
            checked={stated.swapPlates ?? false}
            onChange={(event) => onAnswer({ swapPlates: event.currentTarget.checked ? true : null })}
          />
        )}
        {reading.kind === "delimited" && (
          <Checkbox
            size="xs"
            label={label("resample", prose.putOnAnEvenTimeBase)}
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
  unused: prose.notUsed,
  time: prose.time,
  left: prose.forceLeftFoot,
  right: prose.forceRightFoot,
  total: prose.forceTotal,
};

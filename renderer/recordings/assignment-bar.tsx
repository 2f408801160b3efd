import { Button, Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { type AssignmentRow, acceptedOffers, filledDown, placeOf } from "../../core/assignment/assignment-rows.ts";
import { testKinds } from "../../core/ground/test-kind.ts";
import type { AssignedRow, TrialAssignment } from "../../electron/boundary/stated-changes.ts";
import { boxHeightFrom } from "../shell/box-height.ts";
import { TakeOutButton } from "../shell/take-out-button.tsx";
import { words } from "../words/words.ts";
import { limbs } from "./answers.ts";

const prose = words.screens.recordingRows;

interface AssignmentBarProps {
  /** The chosen rows, in the order of the table. */
  readonly rows: readonly AssignmentRow[];
  readonly onAssign: (rows: readonly AssignedRow[]) => void;
  readonly folder: string;
}

const limbWords = { both: prose.bothLegs, left: prose.leftLeg, right: prose.rightLeg } as const;
const several = { value: "several", label: prose.several };

/** States what the chosen rows are. Each change holds for all of them and is one step that can be taken back. */
export function AssignmentBar({ rows, onAssign, folder }: AssignmentBarProps) {
  const offered = acceptedOffers(rows);
  const test = common(rows.map((row) => row.test.value));
  const limb = common(rows.map((row) => row.limb.value));
  const lead = common(rows.map((row) => row.leadingLeg.value));
  const box = common(rows.map((row) => row.dropHeightMetres.value));
  const hasBox = rows.some((row) => row.dropHeightMetres.applies);
  const hasLead = rows.some((row) => row.leadingLeg.applies);
  const state = (change: TrialAssignment, mayHave: (row: AssignmentRow) => boolean = () => true) =>
    onAssign(rows.filter(mayHave).map((row) => ({ ...placeOf(row), ...change })));
  const [only] = rows;
  return (
    <fieldset className="assignment-bar">
      <legend>
        {rows.length === 1 && only !== undefined
          ? prose.fileIs(only.file, only.trial === undefined ? "" : prose.ofTrialBehind(only.trial))
          : prose.chosenAre(rows.length)}
      </legend>
      <NativeSelect
        label={prose.test}
        value={test === "several" ? test : (test ?? "")}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          if (chosen !== "several") state({ test: testKinds.find((each) => each === chosen) ?? null });
        }}
        data={[
          ...(test === "several" ? [several] : []),
          nothing(test),
          ...testKinds.map((each) => ({ value: each, label: words.tests.label(each) })),
        ]}
      />
      <NativeSelect
        label={prose.limb}
        value={limb === "several" ? limb : (limb ?? "")}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          if (chosen !== "several") state({ limb: limbs.find((each) => each === chosen) ?? null });
        }}
        data={[
          ...(limb === "several" ? [several] : []),
          nothing(limb),
          ...limbs.map((each) => ({ value: each, label: limbWords[each] })),
        ]}
      />
      {hasBox && (
        <BoxField
          key={String(box)}
          before={typeof box === "number" ? box.toFixed(2) : ""}
          placeholder={box === "several" ? prose.several : prose.notStated}
          onState={(metres) => state({ dropHeightMetres: metres }, (row) => row.dropHeightMetres.applies)}
        />
      )}
      {hasLead && (
        <NativeSelect
          label={prose.leadingLeg}
          value={lead === "several" ? lead : (lead ?? "")}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            if (chosen === "several") return;
            const leadingLeg = chosen === "left" || chosen === "right" ? chosen : null;
            state({ leadingLeg }, (row) => row.leadingLeg.applies);
          }}
          data={[
            ...(lead === "several" ? [several] : []),
            nothing(lead),
            { value: "left", label: prose.left },
            { value: "right", label: prose.right },
          ]}
        />
      )}
      <Checkbox
        className="assignment-practice"
        label={rows.length === 1 ? prose.aPracticeJump : prose.practiceJumps}
        title={prose.whatPracticeMeans}
        checked={rows.every((row) => row.practice)}
        indeterminate={rows.some((row) => row.practice) && !rows.every((row) => row.practice)}
        onChange={(event) => state({ practice: event.currentTarget.checked ? true : null })}
      />
      <div className="assignment-deeds">
        {offered.length > 0 && (
          <Button onClick={() => onAssign(offered)}>
            {offered.length === 1 ? prose.acceptWhatIsOffered : prose.acceptWhatIsOfferedFor(offered.length)}
          </Button>
        )}
        {rows.length > 1 && (
          <Button
            variant="default"
            aria-keyshortcuts="Control+D"
            title={prose.fillsDown(rows.length - 1)}
            onClick={() => onAssign(filledDown(rows))}
          >
            {prose.fillDown}
          </Button>
        )}
        {rows.length > 0 && <TakeOutButton folder={folder} files={[...new Set(rows.map((row) => row.file))]} />}
      </div>
    </fieldset>
  );
}

/** Nothing stated; where there is a value, choosing it takes the statement back, and what is recognised remains. */
function nothing(value: unknown): { readonly value: string; readonly label: string } {
  return { value: "", label: value === undefined ? prose.notStated : prose.takeBackWhatWasStated };
}

/** What all rows have in common: one value, nothing, or several. */
function common<Value>(values: readonly (Value | undefined)[]): Value | undefined | "several" {
  return new Set(values).size > 1 ? "several" : values[0];
}

interface BoxFieldProps {
  readonly before: string;
  readonly placeholder: string;
  readonly onState: (metres: number | null) => void;
}

/** Stated when the field is left or Enter is pressed; emptied, it takes the statement back. */
function BoxField({ before, placeholder, onState }: BoxFieldProps) {
  const [written, setWritten] = useState(before);
  const [problem, setProblem] = useState("");
  const send = () => {
    if (written.trim() === before) return;
    const height = written.trim() === "" ? { metres: null } : boxHeightFrom(written);
    if ("problem" in height) return setProblem(height.problem);
    setProblem("");
    onState(height.metres);
  };
  return (
    <TextInput
      label={prose.boxHeight}
      inputMode="decimal"
      placeholder={placeholder}
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

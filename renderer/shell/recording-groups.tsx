import { Checkbox } from "@mantine/core";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { groupName, trialGroups } from "../../core/sheet/sheet-trials.ts";
import { words } from "../words/words.ts";
import { sentenceCase } from "./words.ts";

const prose = words.screens.recordingQuestions;

interface RecordingGroupsProps {
  readonly trials: readonly TrialResult[];
  readonly chosen: ReadonlySet<string>;
  readonly onChange: (chosen: ReadonlySet<string>) => void;
}

/** Chooses among recordings, by what was done in them. */
export function RecordingGroups({ trials, chosen, onChange }: RecordingGroupsProps) {
  const choose = (files: readonly string[], isWanted: boolean) => {
    const next = new Set(chosen);
    for (const file of files) {
      if (isWanted) next.add(file);
      else next.delete(file);
    }
    onChange(next);
  };
  return recordingGroups(trials).map(({ title, files }) => {
    const count = files.filter((file) => chosen.has(file)).length;
    return (
      <fieldset key={title} className="plates-group">
        <legend className="visually-hidden">{title}</legend>
        <Checkbox
          label={prose.chosenOfGroup(title, count, files.length)}
          checked={count === files.length}
          indeterminate={count > 0 && count < files.length}
          onChange={(event) => choose(files, event.currentTarget.checked)}
        />
        <div className="plates-files">
          {files.map((file) => (
            <Checkbox
              key={file}
              size="xs"
              label={file}
              checked={chosen.has(file)}
              onChange={(event) => choose([file], event.currentTarget.checked)}
            />
          ))}
        </div>
      </fieldset>
    );
  });
}

/** The recordings of some trials, by what was done in them. */
function recordingGroups(trials: readonly TrialResult[]): readonly { title: string; files: readonly string[] }[] {
  return trialGroups(trials).map((group) => ({
    title: sentenceCase(groupName(group)),
    files: [...new Set(group.trials.map((trial) => trial.file))],
  }));
}

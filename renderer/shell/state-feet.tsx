import { Button, Radio } from "@mantine/core";
import { useState } from "react";
import { oppositeSide, type Side } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { words } from "../words/words.ts";
import { RecordingGroups } from "./recording-groups.tsx";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface StateFeetProps {
  readonly folder: string;
  /** Trials in which nothing proves which foot stood where. */
  readonly trials: readonly TrialResult[];
  readonly onDone: () => void;
}

/** States which foot stood on which plate in chosen recordings. Nothing is chosen beforehand but the recordings. */
export function StateFeet({ folder, trials, onDone }: StateFeetProps) {
  const { apply } = useWorkspace();
  const [wanted, setWanted] = useState<ReadonlySet<string>>(() => new Set(trials.map((trial) => trial.file)));
  const [onPlate1, setOnPlate1] = useState<Side>();
  const files = [...new Set(trials.map((trial) => trial.file))].filter((file) => wanted.has(file));
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (onPlate1 === undefined) return;
        onDone();
        void apply("trials.statePlates", { folder, files, feet: onPlate1 });
      }}
    >
      <Radio.Group
        label={prose.howAthleteStood}
        value={onPlate1 ?? ""}
        onChange={(value) => setOnPlate1(value === "left" ? "left" : "right")}
      >
        <div className="plates-group">
          {(["left", "right"] as const).map((side) => (
            <Radio
              key={side}
              value={side}
              label={prose.feetOnPlates(side, plateWords(trials, 0), oppositeSide(side), plateWords(trials, 1))}
            />
          ))}
        </div>
      </Radio.Group>
      <p className="muted">{prose.inTheRecordingsChosen}</p>
      <RecordingGroups trials={trials} chosen={wanted} onChange={setWanted} />
      <div className="question-buttons">
        <Button type="submit" disabled={files.length === 0 || onPlate1 === undefined}>
          {prose.stateFor(files.length)}
        </Button>
        <Button variant="default" onClick={onDone}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

/** "plate 1, column “Fz A”": the plate with the names the files give it. */
function plateWords(trials: readonly TrialResult[], index: number): string {
  const names = [...new Set(trials.flatMap((trial) => trial.plates[index]?.name ?? []))];
  const place = words.limbs.plate(index + 1);
  return names.length === 0 || names.includes(place) ? place : prose.plateWithColumns(place, names);
}

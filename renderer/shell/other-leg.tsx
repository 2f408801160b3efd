import { Button } from "@mantine/core";
import { useState } from "react";
import { oppositeSide } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { words } from "../words/words.ts";
import { RecordingGroups } from "./recording-groups.tsx";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface OtherLegProps {
  readonly folder: string;
  /** Single-leg trials whose leg may have been the other one. */
  readonly trials: readonly TrialResult[];
  readonly onDone: () => void;
}

/** Corrects the leg of chosen single-leg trials. */
export function OtherLeg({ folder, trials, onDone }: OtherLegProps) {
  const { apply } = useWorkspace();
  const [wanted, setWanted] = useState<ReadonlySet<string>>(new Set());
  const rows = trials.flatMap(({ file, trial, limb }) => {
    if (!wanted.has(file) || limb === undefined || limb === "both") return [];
    const isOneOfSeveral = trials.filter((each) => each.file === file).length > 1;
    return [{ file, ...(isOneOfSeveral ? { trial } : {}), limb: oppositeSide(limb) }];
  });
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
        void apply("recordings.assign", { folder, rows });
      }}
    >
      <p>{prose.chooseWrongLeg}</p>
      <RecordingGroups trials={trials} chosen={wanted} onChange={setWanted} />
      <div className="question-buttons">
        <Button type="submit" disabled={rows.length === 0}>
          {prose.correctLeg(rows.length)}
        </Button>
        <Button variant="default" onClick={onDone}>
          {prose.cancel}
        </Button>
      </div>
    </form>
  );
}

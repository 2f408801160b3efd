import { Button, SegmentedControl } from "@mantine/core";
import { useState } from "react";
import { withoutOptions } from "../../core/ground/plain-words.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { NotKnownForm } from "../cautions/not-known-form.tsx";
import { saveFile } from "../shell/save-file.ts";
import { words } from "../words/words.ts";
import {
  failedFiles,
  leftAsideOf,
  type OutcomeKind,
  type OutcomeLine,
  outcomeKinds,
  outcomeLines,
  outcomeReport,
  outcomeSummary,
} from "./batch-outcome.ts";
import type { PickedFile } from "./dropped-files.ts";
import { outcomeWords } from "./reading-words.ts";
import type { TakenIn } from "./take-in.ts";

const prose = words.screens.recordingsIntake;
const counts = words.screens.counts;

interface BatchOutcomePanelProps {
  readonly taken: TakenIn;
  readonly workspace: Workspace;
  readonly busy: boolean;
  readonly onRetry: (files: readonly PickedFile[]) => void;
  readonly onOpen: (folder: string, file: string) => void;
}

/** What became of a batch: a line where all is well; else the files that need something, and what to do with them. */
export function BatchOutcomePanel({ taken, workspace, busy, onRetry, onOpen }: BatchOutcomePanelProps) {
  const lines = outcomeLines(taken, workspace);
  const failed = failedFiles(taken, lines);
  const leftAside = leftAsideOf(taken);
  const kinds = outcomeKinds.filter((kind) => lines.some((line) => line.kind === kind));
  // Where all of it is one session, the table of that session says the same.
  const isShown = lines.every((line) => line.folder === workspace.folder);
  const [stating, setStating] = useState(false);
  const cameIn = new Set(taken.files.map((file) => file.folder));
  const unanswered = workspace.sessions
    .filter((each) => each.lacksAnswers && cameIn.has(each.folder))
    .map((each) => each.folder);
  const [opened, setListed] = useState<boolean>();
  const listed = opened ?? (failed.length > 0 && !isShown);
  const [chosen, setChosen] = useState<OutcomeKind | "all">("all");
  const shown = chosen === "all" || !kinds.includes(chosen) ? lines : lines.filter((line) => line.kind === chosen);
  return (
    <div className="batch-outcome">
      <div className="batch-summary">
        <p>
          {taken.cancelled && prose.cancelled}
          {outcomeSummary(lines)}
        </p>
        {failed.length > 0 && (
          <Button size="xs" variant="default" disabled={busy} onClick={() => onRetry(failed)}>
            {prose.tryAgain(failed.length === 1 ? prose.oneNotThrough : prose.others(failed.length))}
          </Button>
        )}
        <button type="button" className="text-button" aria-expanded={listed} onClick={() => setListed(!listed)}>
          {listed ? prose.hideList : prose.showList}
        </button>
        <button type="button" className="text-button" onClick={() => saveFile(outcomeReport(lines, taken))}>
          {prose.saveReport}
        </button>
      </div>
      {leftAside !== "" && <p className="muted">{leftAside}</p>}
      {taken.places.map((place) => (
        <p key={place} className="finding caution">
          {place}
        </p>
      ))}
      {unanswered.length > 0 && (
        <div className="batch-summary">
          <p className="finding caution">{prose.cautionsNotAnswered(unanswered.length)}</p>
          <Button size="xs" variant="default" onClick={() => setStating(true)}>
            {prose.stateNotKnown}
          </Button>
        </div>
      )}
      {stating && <NotKnownForm folders={unanswered} onClose={() => setStating(false)} />}
      {listed && (
        <>
          {kinds.length > 1 && (
            <SegmentedControl
              size="xs"
              aria-label={prose.filesListed}
              value={chosen}
              onChange={(value) => setChosen(value as OutcomeKind | "all")}
              data={[
                { value: "all", label: prose.allFiles(lines.length) },
                ...kinds.map((kind) => ({
                  value: kind,
                  label: `${kind === "not read" ? prose.notRead : outcomeWords(kind)} ${lines.filter((line) => line.kind === kind).length}`,
                })),
              ]}
            />
          )}
          <OutcomeList lines={shown} onOpen={onOpen} />
        </>
      )}
    </div>
  );
}

interface OutcomeListProps {
  readonly lines: readonly OutcomeLine[];
  readonly onOpen: BatchOutcomePanelProps["onOpen"];
}

function OutcomeList({ lines, onOpen }: OutcomeListProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so it must be reachable by keyboard
    <section className="batch-list" aria-label={counts.files(lines.length)} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{prose.file}</th>
            <th scope="col">{prose.outcome}</th>
            <th scope="col">{prose.whatWasFound}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ path, name, folder, kind, message }) => (
            <tr key={path}>
              <th scope="row">
                {folder === undefined ? (
                  path
                ) : (
                  <button type="button" className="text-button file-name" onClick={() => onOpen(folder, name)}>
                    {folder === "" ? name : `${folder}/${name}`}
                  </button>
                )}
              </th>
              <td>
                <span className={kind === "understood" ? undefined : "caution outcome"}>
                  {kind === "not read" ? prose.notRead : outcomeWords(kind)}
                </span>
              </td>
              <td className="muted">{withoutOptions(message)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

import { Button, Progress } from "@mantine/core";
import { useRef, useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { type Discarding, DiscardQuestion } from "../shell/discard-question.tsx";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { BatchOutcomePanel } from "./batch-outcome-panel.tsx";
import { chosenFiles, droppedFiles, type PickedFile } from "./dropped-files.ts";
import { progressWords, type TakenIn, type TakingIn, takeIn, withRetried } from "./take-in.ts";

const prose = words.screens.recordingsIntake;

interface IntakePanelProps {
  readonly workspace: Workspace;
  /** Shows one of the files that came in. */
  readonly onOpen: (file: string) => void;
}

/** Where recordings come in: dropped, or chosen as a folder or as files. */
export function IntakePanel({ workspace, onOpen }: IntakePanelProps) {
  const { host, apply, report } = useWorkspace();
  const folderInput = useRef<HTMLInputElement>(null);
  const filesInput = useRef<HTMLInputElement>(null);
  const cancelled = useRef(false);
  const [over, setOver] = useState(false);
  const [progress, setProgress] = useState<TakingIn>();
  const [outcome, setOutcome] = useState<TakenIn>();
  const [discarding, setDiscarding] = useState<Discarding>();
  /** Does it at once where nothing would be lost. */
  const askFirst = (title: string, onDiscard: () => void) =>
    workspace.unsaved ? setDiscarding({ title, onDiscard }) : onDiscard();

  const take = (files: readonly PickedFile[], batch: string) => {
    cancelled.current = false;
    return takeIn(host, files, {
      batch,
      onProgress: setProgress,
      isCancelled: () => cancelled.current,
      now: () => performance.now(),
    }).finally(() => setProgress(undefined));
  };
  const start = async (files: readonly PickedFile[]) => {
    if (files.length === 0) return;
    setOutcome(undefined);
    const taken = await take(files, crypto.randomUUID());
    setOutcome(taken);
    const folder = taken.files.find((file) => file.folder !== undefined)?.folder;
    if (folder === undefined || !(await apply("workspace.show", { folder }))) await apply("workspace.read", {});
  };
  const retry = async (files: readonly PickedFile[]) => {
    if (outcome === undefined) return;
    setOutcome(withRetried(outcome, await take(files, outcome.batch)));
    await apply("workspace.read", {});
  };
  const pick = (input: HTMLInputElement) => {
    const files = chosenFiles(input.files ?? []);
    input.value = "";
    start(files).catch(report);
  };

  return (
    <section
      className={over ? "panel intake intake-over" : "panel intake"}
      aria-labelledby="intake-title"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        droppedFiles(event.dataTransfer.items).then(start).catch(report);
      }}
    >
      <h2 id="intake-title" className="panel-title">
        {prose.bringRecordings}
      </h2>
      <p>{prose.dropHere(workspace.demo ? prose.inPlaceOfTheDemo : "")}</p>
      <div className="intake-buttons">
        <Button disabled={progress !== undefined} onClick={() => folderInput.current?.click()}>
          {prose.chooseFolder}
        </Button>
        <Button variant="default" disabled={progress !== undefined} onClick={() => filesInput.current?.click()}>
          {prose.chooseFiles}
        </Button>
        {!workspace.demo && (
          <Button
            variant="default"
            disabled={progress !== undefined}
            onClick={() =>
              askFirst(prose.openTheDemo, () => {
                setOutcome(undefined);
                void apply("workspace.openDemo", {});
              })
            }
          >
            {prose.openTheDemo}
          </Button>
        )}
        {workspace.sessions.length > 0 && (
          <Button
            variant="default"
            disabled={progress !== undefined}
            onClick={() =>
              askFirst(prose.closeAllSessions, () => {
                setOutcome(undefined);
                void apply("workspace.clear", {});
              })
            }
          >
            {prose.closeAllSessions}
          </Button>
        )}
      </div>
      <input
        ref={folderInput}
        type="file"
        hidden
        multiple
        {...{ webkitdirectory: "" }}
        onChange={(event) => pick(event.currentTarget)}
      />
      <input ref={filesInput} type="file" hidden multiple onChange={(event) => pick(event.currentTarget)} />
      <DiscardQuestion discarding={discarding} onKeep={() => setDiscarding(undefined)} />
      <div aria-live="polite">
        {progress !== undefined && (
          <div className="intake-progress">
            <Progress
              value={(100 * progress.done) / Math.max(1, progress.total)}
              aria-label={prose.recordingsTakenIn}
              transitionDuration={0}
            />
            <p>{progressWords(progress)}</p>
            <Button
              variant="default"
              size="xs"
              onClick={() => {
                cancelled.current = true;
              }}
            >
              {prose.cancel}
            </Button>
          </div>
        )}
        {outcome !== undefined && (
          <BatchOutcomePanel
            key={outcome.batch}
            taken={outcome}
            workspace={workspace}
            busy={progress !== undefined}
            onRetry={(files) => void retry(files).catch(report)}
            onOpen={(folder, file) => {
              onOpen(file);
              if (folder !== workspace.folder) void apply("workspace.show", { folder });
            }}
          />
        )}
      </div>
    </section>
  );
}

import "./recordings.css";
import { Button } from "@mantine/core";
import { useEffect, useMemo, useState } from "react";
import { acceptedOffers, assignmentRows, filledDown } from "../../core/assignment/assignment-rows.ts";
import { sessionOffers } from "../../core/assignment/session-offers.ts";
import type { AssignedRow } from "../../electron/boundary/stated-changes.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { WhichFootWasWhere } from "../shell/which-foot-was-where.tsx";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { AssignmentBar } from "./assignment-bar.tsx";
import { AssignmentTable, type RecordingRow } from "./assignment-table.tsx";
import { AthleteQuestionPanel } from "./athlete-question.tsx";
import { IntakePanel } from "./intake-panel.tsx";
import { LayoutsPanel } from "./layouts-panel.tsx";
import { RecordingDetail } from "./recording-detail.tsx";
import { keptSelection, onlyRow, type RowSelection } from "./row-selection.ts";
import { SessionCautions } from "./session-cautions.tsx";
import { SessionStatements } from "./session-statements.tsx";
import { useWatch } from "./use-watch.ts";
import { WatchPanel } from "./watch-panel.tsx";

const prose = words.screens.recordingsIntake;
const counts = words.screens.counts;

interface RecordingsScreenProps {
  readonly workspace: Workspace;
  readonly onShowTraces: () => void;
  /** Told whether the board of a watched session, which other people read, is shown. */
  readonly onBoard: (isShown: boolean) => void;
}

/** Bringing recordings in, what each one is, and what was understood of it. */
export function RecordingsScreen({ workspace, onShowTraces, onBoard }: RecordingsScreenProps) {
  const { apply } = useWorkspace();
  const watch = useWatch();
  const isWatching = watch.view !== undefined && watch.view.state !== "off";
  useEffect(() => onBoard(isWatching), [onBoard, isWatching]);
  const { session, recordings, folder } = workspace;
  const [selected, setSelected] = useState<RowSelection>();
  const rows = useMemo(() => rowsOf(workspace), [workspace]);
  const offers = useMemo(
    () => sessionOffers(session?.description ?? {}, folder, recordings),
    [session, folder, recordings],
  );
  const keys = rows.map((each) => each.key);
  const selection = keptSelection(selected, keys, firstToLookAt(rows)?.key ?? "");
  const shown = rows.find((each) => each.key === selection.active);
  const chosen = rows.filter((each) => selection.chosen.has(each.key));
  const offered = useMemo(() => acceptedOffers(rows.map((each) => each.row)), [rows]);
  const assign = (changes: readonly AssignedRow[]) => {
    if (changes.length > 0) void apply("recordings.assign", { folder, rows: changes });
  };
  const open = (file: string) => setSelected(onlyRow(keyOf({ file })));
  return (
    <>
      <h1 className="area-title">{prose.recordings}</h1>
      <WatchPanel watch={watch} workspace={workspace} before={<IntakePanel workspace={workspace} onOpen={open} />} />
      {session?.athleteQuestion !== undefined && session.gravity !== undefined && (
        <AthleteQuestionPanel folder={folder} question={session.athleteQuestion} gravity={session.gravity} />
      )}
      {session !== undefined && (
        <SessionStatements key={folder} session={session} showsProtocol={!isWatching} offers={offers} />
      )}
      {session !== undefined && (
        <SessionCautions key={`cautions ${folder}`} session={session} workspace={workspace} behindButton={isWatching} />
      )}
      {session?.findings.some((each) => each.code === "plates-contradict") && <WhichFootWasWhere session={session} />}
      {session !== undefined && shown !== undefined && (
        <>
          <section className="panel recordings-panel" aria-labelledby="files-title">
            <div className="recordings-head">
              <div>
                <h2 id="files-title" className="panel-title">
                  {folder === "" ? prose.looseRecordings : folder}
                </h2>
                <p className="muted">{countWords(workspace)}</p>
              </div>
              <div className="intake-buttons">
                {offered.length > 1 && chosen.length < rows.length && (
                  <Button variant="default" onClick={() => assign(offered)}>
                    {prose.acceptAllOffers(offered.length)}
                  </Button>
                )}
                <Button onClick={onShowTraces}>{prose.lookAtTraces}</Button>
              </div>
            </div>
            <AssignmentTable
              rows={rows}
              selection={selection}
              onSelect={setSelected}
              onFillDown={() => assign(filledDown(chosen.map((each) => each.row)))}
            />
            <AssignmentBar folder={folder} rows={chosen.map((each) => each.row)} onAssign={assign} />
          </section>
          <RecordingDetail
            key={`${folder} ${shown.view.file}`}
            session={session}
            view={shown.view}
            all={recordings}
            chosen={new Set(chosen.map((each) => each.row.file))}
          />
        </>
      )}
      <LayoutsPanel workspace={workspace} />
    </>
  );
}

function rowsOf({ session, recordings }: Workspace): readonly RecordingRow[] {
  if (session === undefined) return [];
  const views = new Map(recordings.map((view) => [view.file, view]));
  return assignmentRows(session, recordings).flatMap((row) => {
    const view = views.get(row.file);
    return view === undefined ? [] : [{ key: keyOf(row), row, view }];
  });
}

function keyOf({ file, trial }: { readonly file: string; readonly trial?: number }): string {
  return trial === undefined ? file : `${file} ${trial}`;
}

function firstToLookAt(rows: readonly RecordingRow[]): RecordingRow | undefined {
  return (
    rows.find(({ view }) => view.outcome === "asks") ?? rows.find(({ view }) => view.outcome === "refused") ?? rows[0]
  );
}

function countWords({ recordings }: Workspace): string {
  const count = (outcome: (typeof recordings)[number]["outcome"]) =>
    recordings.filter((view) => view.outcome === outcome).length;
  const words = [counts.recordings(recordings.length)];
  if (count("asks") > 0) words.push(prose.askingForSomething(count("asks")));
  if (count("refused") > 0) words.push(prose.refusedOf(count("refused")));
  return words.join(", ");
}

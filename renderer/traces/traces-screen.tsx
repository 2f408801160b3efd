import "./traces.css";
import "./event-table.css";
import "./hop-table.css";
import "./measures-table.css";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { WhichFootWasWhere } from "../shell/which-foot-was-where.tsx";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { MeasuresTable } from "./measures-table.tsx";
import { SessionList } from "./session-list.tsx";
import { groupTrials, trialKey } from "./trial-groups.ts";
import { type CurveChoice, TrialPanel } from "./trial-panel.tsx";
import { useSeenMark } from "./use-seen-mark.ts";
import { useTraceKeys } from "./use-trace-keys.ts";
import { useTrialTrace } from "./use-trial-trace.ts";

const prose = words.screens.traces;

/** The trial looked at last in each session, so that coming back from another area finds it again. */
const lastLookedAt = new Map<string, string>();

/** Looking at one trial after the other: the session's list, the curve, the numbers. */
export function TracesScreen({ session }: { readonly session: SessionResult }) {
  const { folder, description } = session;
  const { involved } = description;
  const groups = useMemo(() => groupTrials(session.trials), [session]);
  const listed = useMemo(() => groups.flatMap((group) => group.trials), [groups]);
  const [chosen, setChosen] = useState(() => lastLookedAt.get(folder) ?? "");
  const [choice, setChoice] = useState<CurveChoice>({ extras: [], filtered: false });
  const current = listed.find(({ trial }) => trialKey(trial) === chosen) ?? listed[0];
  const alike = useMemo(() => {
    const group = current === undefined ? undefined : groups.find(({ trials }) => trials.includes(current));
    return [...new Set(group?.trials.map(({ trial }) => trial.file))];
  }, [groups, current]);
  const trace = useTrialTrace(folder, current?.trial);

  const select = useCallback(
    (key: string) => {
      lastLookedAt.set(folder, key);
      setChosen(key);
    },
    [folder],
  );
  const step = useCallback(
    (by: -1 | 1) => {
      const next = current === undefined ? undefined : listed[listed.indexOf(current) + by];
      if (next !== undefined) select(trialKey(next.trial));
    },
    [current, listed, select],
  );
  const seenMark = useSeenMark(folder, current?.trial);
  const { mark } = seenMark;
  const markSeen = useCallback(() => {
    if (mark()) step(1);
  }, [mark, step]);
  useTraceKeys(step, markSeen);

  const selected = current === undefined ? "" : trialKey(current.trial);
  useEffect(() => showInList(selected), [selected]);

  return (
    <>
      <h1 className="visually-hidden">{prose.traces}</h1>
      <FindingsList findings={session.findings.filter((each) => each.code !== "plates-contradict")} />
      <WhichFootWasWhere session={session} />
      {current === undefined ? (
        <p className="panel panel-padded">{prose.noTrial}</p>
      ) : (
        <div className="traces">
          <SessionList
            title={description.date === undefined ? prose.session : prose.sessionOf(dateWords(description.date))}
            groups={groups}
            involved={involved}
            selected={selected}
            onSelect={select}
          />
          <TrialPanel
            key={selected}
            folder={folder}
            listed={current}
            alike={alike}
            trace={trace}
            involved={involved}
            choice={choice}
            onChoice={setChoice}
            onStep={step}
            seenMark={seenMark}
          />
          <MeasuresTable trial={current.trial} involved={involved} />
        </div>
      )}
    </>
  );
}

/**
 * Scrolls the list alone, and only as far as needed. The browser's own way to scroll something into view would also
 * move the place from which the Tab key goes on.
 */
function showInList(key: string): void {
  const item = document.querySelector(`[data-trial="${CSS.escape(key)}"]`);
  const list = item?.closest(".session-list");
  if (!item || !list) return;
  const place = item.getBoundingClientRect();
  const room = list.getBoundingClientRect();
  if (place.top < room.top) list.scrollTop -= room.top - place.top;
  if (place.bottom > room.bottom) list.scrollTop += place.bottom - room.bottom;
}

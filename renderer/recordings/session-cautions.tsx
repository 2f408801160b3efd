import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { CautionsPanel } from "../cautions/cautions-panel.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.sessionStatements;

interface SessionCautionsProps {
  readonly session: SessionResult;
  readonly workspace: Workspace;
  /** True beside a board that other people read: then it stands behind a button of the tester's. */
  readonly behindButton: boolean;
}

/** The cautions and readings of the session whose recordings are shown. */
export function SessionCautions({ session, workspace, behindButton }: SessionCautionsProps) {
  const [opened, setOpened] = useState(false);
  const { keptAs, register } = workspace;
  const canWrite = keptAs === undefined || register?.readOnlyBecause === undefined;
  const shows = opened || !behindButton;
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="session-cautions-title">
      <div className="session-summary">
        <h2 id="session-cautions-title" className="panel-title">
          {prose.cautionsAndReadings}
        </h2>
        {behindButton && (
          <button type="button" className="text-button" aria-expanded={opened} onClick={() => setOpened(!opened)}>
            {opened ? prose.hideThem : prose.showThemOnThisDevice}
          </button>
        )}
      </div>
      {shows && <CautionsPanel session={session} canWrite={canWrite} />}
    </section>
  );
}

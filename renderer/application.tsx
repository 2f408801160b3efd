import "./shell/frame.css";
import { useCallback, useState } from "react";
import type { Workspace } from "../electron/boundary/workspace-view.ts";
import { AthletesScreen } from "./athletes/athletes-screen.tsx";
import { RecordingsScreen } from "./recordings/recordings-screen.tsx";
import { SheetScreen } from "./sheet/sheet-screen.tsx";
import { AreaBoundary } from "./shell/area-boundary.tsx";
import { type Area, rememberArea, rememberedArea } from "./shell/areas.ts";
import { ConflictQuestion } from "./shell/conflict-question.tsx";
import { ErrorToast } from "./shell/error-toast.tsx";
import { Header } from "./shell/header.tsx";
import { LockScreen } from "./shell/lock-screen.tsx";
import { Navigation } from "./shell/navigation.tsx";
import { Notices } from "./shell/notices.tsx";
import { StepQuestion } from "./shell/step-question.tsx";
import { useAttendance } from "./shell/use-attendance.ts";
import { useLeavingQuestion } from "./shell/use-leaving-question.ts";
import { useSteps } from "./shell/use-steps.ts";
import { useUndoKeys } from "./shell/use-undo-keys.ts";
import { useWorkspace } from "./shell/workspace.tsx";
import { SidesScreen } from "./sides/sides-screen.tsx";
import { TracesScreen } from "./traces/traces-screen.tsx";
import { words } from "./words/words.ts";

const prose = words.screens.frame;

/** The frame around the areas: navigation, header, notices and the area shown. */
export function Application() {
  const { workspace, busy } = useWorkspace();
  const [chosen, setChosen] = useState(rememberedArea);
  const [boardShown, setBoardShown] = useState(false);
  const choose = useCallback((area: Area) => {
    rememberArea(area);
    setChosen(area);
    window.scrollTo(0, 0);
  }, []);
  const register = workspace?.register;
  const isLocked = register?.locked === true;
  const steps = useSteps();
  useUndoKeys(steps.take);
  useAttendance(register?.encrypted === true && !isLocked);
  useLeavingQuestion(workspace?.unsaved ?? false);

  if (workspace === undefined) {
    return (
      <main className="waiting">
        <h1>{prose.program}</h1>
        <p>{busy ? prose.readingRecordings : prose.recordingsNotRead}</p>
        <ErrorToast />
      </main>
    );
  }
  if (register !== undefined && isLocked) return <LockScreen file={register.file} />;
  const area =
    chosen ?? (workspace.session !== undefined ? "traces" : register === undefined ? "recordings" : "athletes");
  return (
    <div className="frame">
      <button type="button" className="skip-link" onClick={() => document.getElementById("area")?.focus()}>
        {prose.skipToContent}
      </button>
      <Navigation area={area} register={register} onChoose={choose} />
      <div className="frame-body">
        <Header steps={steps} onOpen={() => choose("recordings")} />
        <Notices inPublic={area === "recordings" && boardShown} onKeep={() => choose("athletes")} />
        <main id="area" className={`area area-${area}`} tabIndex={-1} aria-busy={busy}>
          <AreaBoundary area={area} workspace={workspace}>
            <AreaScreen area={area} workspace={workspace} onChoose={choose} onBoard={setBoardShown} />
          </AreaBoundary>
        </main>
      </div>
      <StepQuestion asked={steps.asked} />
      <ConflictQuestion />
      <ErrorToast />
    </div>
  );
}

interface AreaScreenProps {
  readonly area: Area;
  readonly workspace: Workspace;
  readonly onChoose: (area: Area) => void;
  /** Told whether the board of a watched session stands on the screen of the recordings. */
  readonly onBoard: (isShown: boolean) => void;
}

function AreaScreen({ area, workspace, onChoose, onBoard }: AreaScreenProps) {
  if (area === "athletes") return <AthletesScreen workspace={workspace} onShow={onChoose} />;
  if (area === "recordings") {
    return <RecordingsScreen workspace={workspace} onShowTraces={() => onChoose("traces")} onBoard={onBoard} />;
  }
  const { session } = workspace;
  if (session === undefined) return <NothingOpen area={area} onOpen={() => onChoose("recordings")} />;
  switch (area) {
    case "traces":
      return <TracesScreen key={session.folder} session={session} />;
    case "sides":
      return <SidesScreen key={session.folder} session={session} />;
    case "sheet":
      return <SheetScreen session={session} />;
  }
}

function NothingOpen({ area, onOpen }: { readonly area: Area; readonly onOpen: () => void }) {
  return (
    <section className="panel panel-padded">
      <h1 className="area-title">{area === "sheet" ? prose.sheet : area === "sides" ? prose.sides : prose.traces}</h1>
      <p>
        {prose.noSessionIsOpen}{" "}
        <button type="button" className="text-button" onClick={onOpen}>
          {prose.recordings}
        </button>
        .
      </p>
    </section>
  );
}

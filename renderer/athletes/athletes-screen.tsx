import "./athletes.css";
import "./copies.css";
import "./erasure.css";
import { Button } from "@mantine/core";
import { useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { Area } from "../shell/areas.ts";
import { words } from "../words/words.ts";
import { AthleteList } from "./athlete-list.tsx";
import { AthletePage } from "./athlete-page.tsx";
import { KeepSession } from "./keep-session.tsx";
import { openFilter } from "./list-filter.ts";
import { RecordForm } from "./record-form.tsx";
import { RegisterNotice } from "./register-notice.tsx";
import { RegisterSettings } from "./register-settings.tsx";
import { rememberAthlete, rememberedAthlete } from "./shown-athlete.ts";
import { useAthletePage, useAthletes } from "./use-athletes.ts";

const prose = words.screens.athletesList;

interface AthletesScreenProps {
  readonly workspace: Workspace;
  readonly onShow: (area: Area) => void;
}

/** The register: whose sessions there are, and everything about one athlete. */
export function AthletesScreen({ workspace, onShow }: AthletesScreenProps) {
  const [settings, setSettings] = useState(false);
  const { register } = workspace;
  const isOpen = register !== undefined && register.kind !== "none" && !register.locked;
  return (
    <>
      <div className="athletes-head">
        <h1 className="area-title">{prose.athletes}</h1>
        {isOpen && (
          <Button size="xs" variant="default" aria-expanded={settings} onClick={() => setSettings(!settings)}>
            {settings ? prose.backToAthletes : prose.registerSettings}
          </Button>
        )}
      </div>
      <RegisterNotice workspace={workspace} />
      {isOpen && settings && <RegisterSettings workspace={workspace} />}
      {isOpen && !settings && (
        <>
          <KeepSession key={workspace.folder} workspace={workspace} />
          <AthletesColumns workspace={workspace} onShow={onShow} />
        </>
      )}
    </>
  );
}

function AthletesColumns({ workspace, onShow }: AthletesScreenProps) {
  const [chosen, setChosen] = useState(rememberedAthlete);
  const [adding, setAdding] = useState(false);
  const fallback = useFirstShown(workspace);
  const athlete = chosen === "" ? fallback : chosen;
  const choose = (id: string) => {
    rememberAthlete(id);
    setChosen(id);
    setAdding(false);
  };
  return (
    <div className="athletes-columns">
      <AthleteList
        workspace={workspace}
        shown={adding ? "" : athlete}
        onChoose={choose}
        onAdd={() => setAdding(true)}
      />
      {adding ? (
        <RecordForm kind="athletes" title={prose.addAthlete} onDone={choose} onCancel={() => setAdding(false)} />
      ) : athlete === "" ? (
        <NobodyChosen />
      ) : (
        <ChosenAthlete
          key={athlete}
          athlete={athlete}
          workspace={workspace}
          onShow={onShow}
          onGone={() => choose("")}
        />
      )}
    </div>
  );
}

interface ChosenAthleteProps extends AthletesScreenProps {
  readonly athlete: string;
  readonly onGone: () => void;
}

function ChosenAthlete({ athlete, workspace, onShow, onGone }: ChosenAthleteProps) {
  const page = useAthletePage(athlete, workspace);
  if (page === undefined) return <p className="muted">{prose.readingRegister}</p>;
  if (page === "gone") return <NobodyChosen />;
  return <AthletePage page={page} workspace={workspace} onShow={onShow} onGone={onGone} />;
}

function NobodyChosen() {
  return (
    <section className="panel panel-padded">
      <h2 className="panel-title">{prose.nobodyIsChosen}</h2>
      <p className="muted">{prose.chooseAnAthlete}</p>
    </section>
  );
}

/** The athlete of the session shown, else the one used last; "" where there is neither. */
function useFirstShown(workspace: Workspace): string {
  const list = useAthletes(openFilter, workspace);
  const code = workspace.keptAs === undefined ? undefined : workspace.session?.description.athlete?.code;
  const ofSession = list?.athletes.find((line) => line.code === code)?.id;
  const known = list?.recent.find((id) => list.athletes.some((line) => line.id === id));
  return ofSession ?? known ?? "";
}

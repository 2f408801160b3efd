import { Button } from "@mantine/core";
import { useState } from "react";
import type { WrittenKind } from "../../electron/boundary/record-requests.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { RecordKey } from "../../electron/register/record-tables.ts";
import type { AthletePage as Page } from "../../electron/register/register-views.ts";
import type { Area } from "../shell/areas.ts";
import { today } from "../shell/dates.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { athleteFacts } from "./athlete-facts.ts";
import { Consents } from "./consents.tsx";
import { CurrentSession } from "./current-session.tsx";
import { InjuryQuestions } from "./injury-questions.tsx";
import { RecordForm } from "./record-form.tsx";
import { StartSessionForm } from "./start-session-form.tsx";
import { Timeline } from "./timeline.tsx";

const prose = words.screens.athleteRecord;

interface AthletePageProps {
  readonly page: Page;
  readonly workspace: Workspace;
  readonly onShow: (area: Area) => void;
  /** After the athlete went to the bin. */
  readonly onGone: () => void;
}

type Doing = { readonly form: "session" } | { readonly form: WrittenKind; readonly id?: string };

const formTitles: Readonly<Record<WrittenKind, readonly [add: string, change: string]>> = {
  athletes: [prose.addAthlete, prose.changeAthlete],
  injuries: [prose.addInjury, prose.changeInjury],
  operations: [prose.addOperation, prose.changeOperation],
  consents: [prose.addConsent, prose.changeConsent],
};

/** One athlete: who it is, the session under way, and everything in time. */
export function AthletePage({ page, workspace, onShow, onGone }: AthletePageProps) {
  const { apply } = useWorkspace();
  const [doing, setDoing] = useState<Doing>();
  const { athlete } = page;
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  const shown = page.sessions.find(({ session }) => session.id === workspace.keptAs);
  const done = () => setDoing(undefined);
  const bin = ({ kind, id }: RecordKey) => void apply("records.bin", { kind, id });
  const { code, name, note } = athlete.content;
  return (
    <div className="athlete-page">
      <section className="panel panel-padded athlete-head" aria-labelledby="athlete-title">
        <div>
          <h2 id="athlete-title" className="athlete-title">
            {name ?? code} {name !== undefined && <span className="muted">{code}</span>}
          </h2>
          <p className="muted">{athleteFacts(page, today())}</p>
          {note !== undefined && <p>{note}</p>}
        </div>
        {canWrite && (
          <div className="form-buttons">
            <Button onClick={() => setDoing({ form: "session" })}>{prose.startNextSession}</Button>
            <Button variant="default" onClick={() => setDoing({ form: "athletes", id: athlete.id })}>
              {prose.change}
            </Button>
            <Button variant="default" onClick={() => setDoing({ form: "injuries" })}>
              {prose.addInjury}
            </Button>
            <Button variant="default" onClick={() => setDoing({ form: "operations" })}>
              {prose.addOperation}
            </Button>
          </div>
        )}
      </section>
      {canWrite && doing === undefined && (
        <InjuryQuestions
          page={page}
          onAdd={() => setDoing({ form: "injuries" })}
          onEdit={(form, id) => setDoing({ form, id })}
        />
      )}
      {doing?.form === "session" && <StartSessionForm page={page} onDone={done} onCancel={done} />}
      {doing !== undefined && doing.form !== "session" && (
        <RecordForm
          key={`${doing.form} ${doing.id ?? ""}`}
          kind={doing.form}
          title={formTitles[doing.form][doing.id === undefined ? 0 : 1]}
          {...recordOf(page, doing)}
          {...(doing.form === "athletes" ? {} : { athlete: athlete.id })}
          {...(doing.form === "consents" ? { defaults: { date: today(), sheet: prose.allSheets } } : {})}
          onDone={done}
          onCancel={done}
        />
      )}
      {shown !== undefined && workspace.session !== undefined && doing?.form !== "session" && (
        <CurrentSession
          key={shown.session.id}
          session={workspace.session}
          record={shown.session}
          canWrite={canWrite}
          onShow={onShow}
        />
      )}
      {doing?.form !== "session" && (
        <>
          <Timeline
            page={page}
            shown={workspace.keptAs}
            canWrite={canWrite}
            onOpen={(session) => void apply("sessions.open", { session })}
            onEdit={(form, id) => setDoing({ form, id })}
            onBin={bin}
          />
          <Consents
            consents={page.consents}
            canWrite={canWrite}
            onAdd={() => setDoing({ form: "consents" })}
            onEdit={(id) => setDoing({ form: "consents", id })}
            onBin={bin}
          />
        </>
      )}
      {canWrite && doing?.form !== "session" && (
        <p className="athlete-foot">
          <button
            type="button"
            className="text-button"
            onClick={() => {
              onGone();
              bin(athlete);
            }}
          >
            {prose.moveAthleteToBin(name ?? code)}
          </button>
        </p>
      )}
    </div>
  );
}

/** The record a form changes, where it changes one. */
function recordOf(page: Page, { form, id }: { readonly form: WrittenKind; readonly id?: string }) {
  const all = {
    athletes: [page.athlete],
    injuries: page.injuries,
    operations: page.operations,
    consents: page.consents,
  };
  const record = all[form].find((each) => each.id === id);
  return record === undefined ? {} : { record: { id: record.id, content: record.content } };
}

import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { openFilter } from "./list-filter.ts";
import { useAthletes } from "./use-athletes.ts";

const prose = words.screens.athleteRecord;

const newAthlete = "new";

/** Puts the session shown into the register, where it was only brought in as files. Nothing for any other. */
export function KeepSession({ workspace }: { readonly workspace: Workspace }) {
  const { apply } = useWorkspace();
  const list = useAthletes(openFilter, workspace);
  const { session, keptAs, folder, register, recordings } = workspace;
  const stated = session?.description.athlete;
  const [chosen, setChosen] = useState("");
  const [code, setCode] = useState(stated?.code ?? "");
  const [name, setName] = useState(stated?.name ?? "");
  if (session === undefined || keptAs !== undefined) return null;
  const athletes = list?.athletes ?? [];
  const same = athletes.find((line) => line.code === stated?.code)?.id;
  const choice = chosen === "" ? (same ?? newAthlete) : chosen;
  const isNew = choice === newAthlete;
  const title = folder === "" ? prose.looseRecordings : folder;
  const canKeep = register?.kind === "own" && register.readOnlyBecause === undefined;
  return (
    <form
      className="panel panel-padded session-form"
      aria-labelledby="keep-title"
      onSubmit={(event) => {
        event.preventDefault();
        const typed = name.trim() === "" ? { code: code.trim() } : { code: code.trim(), name: name.trim() };
        void apply("sessions.keep", { folder, athlete: isNew ? typed : { id: choice } });
      }}
    >
      <h2 id="keep-title" className="panel-title">
        {prose.notInRegisterYet(title)}
      </h2>
      <p className="muted">
        {prose.liveOnlyUntilClosed(recordings.length, !canKeep && register?.kind === "demo" ? prose.demoTakesNone : "")}
      </p>
      {canKeep && (
        <>
          <div className="answer-fields">
            <NativeSelect
              label={prose.athlete}
              value={choice}
              onChange={(event) => setChosen(event.currentTarget.value)}
              data={[
                { value: newAthlete, label: prose.newAthlete },
                ...athletes.map((line) => ({
                  value: line.id,
                  label: line.name === undefined ? line.code : `${line.code}, ${line.name}`,
                })),
              ]}
            />
            {isNew && (
              <>
                <TextInput label={prose.code} value={code} onChange={(event) => setCode(event.currentTarget.value)} />
                <TextInput
                  label={prose.nameIfWanted}
                  value={name}
                  onChange={(event) => setName(event.currentTarget.value)}
                />
              </>
            )}
          </div>
          <Button type="submit" disabled={isNew && code.trim() === ""}>
            {prose.keepInRegister}
          </Button>
        </>
      )}
    </form>
  );
}

import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { countOf } from "../../core/ground/plain-words.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { openFilter } from "./list-filter.ts";
import { useAthletes } from "./use-athletes.ts";

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
  const title = folder === "" ? "Loose recordings" : folder;
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
        “{title}” is not in the register yet
      </h2>
      <p className="muted">
        {countOf(recordings.length, "recording")} and what was decided about them live only until the program closes.
        {!canKeep && register?.kind === "demo" && " The demo's register takes no recordings of yours: start your own."}
      </p>
      {canKeep && (
        <>
          <div className="answer-fields">
            <NativeSelect
              label="Athlete"
              value={choice}
              onChange={(event) => setChosen(event.currentTarget.value)}
              data={[
                { value: newAthlete, label: "a new athlete" },
                ...athletes.map((line) => ({
                  value: line.id,
                  label: line.name === undefined ? line.code : `${line.code}, ${line.name}`,
                })),
              ]}
            />
            {isNew && (
              <>
                <TextInput label="Code" value={code} onChange={(event) => setCode(event.currentTarget.value)} />
                <TextInput
                  label="Name, if wanted"
                  value={name}
                  onChange={(event) => setName(event.currentTarget.value)}
                />
              </>
            )}
          </div>
          <Button type="submit" disabled={isNew && code.trim() === ""}>
            Keep it in the register
          </Button>
        </>
      )}
    </form>
  );
}

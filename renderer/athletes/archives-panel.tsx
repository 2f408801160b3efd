import { Button, NativeSelect, PasswordInput, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import { archiveByteLimit } from "../../core/recording/size-limit.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { saveFile } from "../shell/save-file.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { openFilter } from "./list-filter.ts";
import { NewPassphrase } from "./new-passphrase.tsx";
import { useAthletes } from "./use-athletes.ts";

const prose = words.screens.archives;

const archiveTooLarge = prose.tooLarge;

/** Archives: one athlete, or all, out to another computer and in from one. */
export function ArchivesPanel({ workspace }: { readonly workspace: Workspace }) {
  const { host, apply, report } = useWorkspace();
  const list = useAthletes(openFilter, workspace);
  const input = useRef<HTMLInputElement>(null);
  const [athlete, setAthlete] = useState("");
  const [outPassphrase, setOutPassphrase] = useState("");
  const [inPassphrase, setInPassphrase] = useState("");
  const [place, setPlace] = useState("");
  const [words, setWords] = useState("");
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  const chosen: { readonly athlete?: string; readonly passphrase?: Uint8Array } = {
    ...(athlete !== "" && { athlete }),
    ...(outPassphrase !== "" && { passphrase: passphraseBytes(outPassphrase) }),
  };
  const exportTo = (where: { readonly place?: string }) =>
    host.call("archive.export", { ...chosen, ...where }).then(({ file, records, recordings }) => {
      if (file !== undefined) saveFile(file);
      // Kept where it was refused: asked once more with an empty field, the archive would be written unprotected.
      setOutPassphrase("");
      setWords(
        prose.written(
          chosen.passphrase === undefined ? prose.withoutPassphrase : prose.underItsPassphrase,
          records,
          recordings,
        ),
      );
      // The list of copies has one more.
      return apply("workspace.read", {});
    }, report);
  const importFrom = (from: HostApi["archive.import"]["request"]) => {
    setInPassphrase("");
    return host
      .call("archive.import", { ...from, ...(inPassphrase !== "" && { passphrase: passphraseBytes(inPassphrase) }) })
      .then((merged) => {
        setWords(mergedWords(merged));
        return apply("workspace.read", {});
      }, report);
  };
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="archives-title">
      <h2 id="archives-title" className="panel-title">
        {prose.archives}
      </h2>
      <p className="muted">{prose.whatAnArchiveIs}</p>
      <div className="answer-fields">
        <NativeSelect
          label={prose.whom}
          value={athlete}
          onChange={(event) => setAthlete(event.currentTarget.value)}
          data={[
            { value: "", label: prose.everybody },
            ...(list?.athletes ?? []).map(({ id, code, name }) => ({
              value: id,
              label: name === undefined ? code : `${code}, ${name}`,
            })),
          ]}
        />
        <NewPassphrase
          label={prose.passphraseIfWanted}
          showLabel={prose.showPassphrase}
          value={outPassphrase}
          onChange={setOutPassphrase}
        />
      </div>
      <div className="form-buttons">
        <Button variant="default" onClick={() => void exportTo({})}>
          {prose.takeAlongAsFile}
        </Button>
      </div>
      <TextInput
        label={prose.fileOnThisComputer}
        value={place}
        onChange={(event) => setPlace(event.currentTarget.value)}
      />
      <div className="form-buttons">
        <Button variant="default" disabled={place.trim() === ""} onClick={() => void exportTo({ place: place.trim() })}>
          {prose.writeItThere}
        </Button>
        {canWrite && (
          <Button
            variant="default"
            disabled={place.trim() === ""}
            onClick={() => void importFrom({ place: place.trim() })}
          >
            {prose.takeInFromThere}
          </Button>
        )}
      </div>
      {canWrite && (
        <>
          <PasswordInput
            label={prose.passphraseToTakeIn}
            visibilityToggleButtonProps={{ "aria-label": prose.showPassphraseToTakeIn }}
            value={inPassphrase}
            onChange={(event) => setInPassphrase(event.currentTarget.value)}
          />
          <div className="form-buttons">
            <Button variant="default" onClick={() => input.current?.click()}>
              {prose.takeArchive}
            </Button>
          </div>
          <input
            ref={input}
            type="file"
            hidden
            aria-label={prose.archiveToTakeIn}
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? [];
              event.currentTarget.value = "";
              if (file === undefined) return;
              if (file.size > archiveByteLimit) return setWords(archiveTooLarge);
              file
                .arrayBuffer()
                .then((bytes) => importFrom({ bytes: new Uint8Array(bytes) }))
                .catch(report);
            }}
          />
        </>
      )}
      <p aria-live="polite" className="muted">
        {words}
      </p>
    </section>
  );
}

function mergedWords({ added, same, kept, recordings, notes }: HostApi["archive.import"]["reply"]): string {
  return [prose.cameIn(added, recordings, same), kept === 0 ? "" : prose.differHere(kept), ...new Set(notes)]
    .filter((part) => part !== "")
    .join(" ");
}

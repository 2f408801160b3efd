import { Button, NativeSelect, PasswordInput, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import { countOf } from "../../core/ground/plain-words.ts";
import { archiveByteLimit } from "../../core/recording/size-limit.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { saveFile } from "../shell/save-file.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { openFilter } from "./list-filter.ts";
import { NewPassphrase } from "./new-passphrase.tsx";
import { useAthletes } from "./use-athletes.ts";

const archiveTooLarge =
  "This archive is larger than 64 MB: give its whole path on this computer above and take it in from there. Nothing was changed.";

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
        `Written ${chosen.passphrase === undefined ? "without a passphrase" : "under its passphrase"}: ${countOf(records, "record")}, ${countOf(recordings, "recording")} among them. Keep it as carefully as the register.`,
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
        Archives
      </h2>
      <p className="muted">
        An archive takes an athlete, or everybody, to another computer: an open format, each part with a checksum. What
        is in the register already never comes in twice.
      </p>
      <div className="answer-fields">
        <NativeSelect
          label="Whom to take along"
          value={athlete}
          onChange={(event) => setAthlete(event.currentTarget.value)}
          data={[
            { value: "", label: "everybody" },
            ...(list?.athletes ?? []).map(({ id, code, name }) => ({
              value: id,
              label: name === undefined ? code : `${code}, ${name}`,
            })),
          ]}
        />
        <NewPassphrase
          label="Passphrase of the archive, if wanted"
          showLabel="Show the archive's passphrase"
          value={outPassphrase}
          onChange={setOutPassphrase}
        />
      </div>
      <div className="form-buttons">
        <Button variant="default" onClick={() => void exportTo({})}>
          Take along as a file
        </Button>
      </div>
      <TextInput
        label="Or a file on this computer, with its whole path"
        value={place}
        onChange={(event) => setPlace(event.currentTarget.value)}
      />
      <div className="form-buttons">
        <Button variant="default" disabled={place.trim() === ""} onClick={() => void exportTo({ place: place.trim() })}>
          Write it there
        </Button>
        {canWrite && (
          <Button
            variant="default"
            disabled={place.trim() === ""}
            onClick={() => void importFrom({ place: place.trim() })}
          >
            Take in from there
          </Button>
        )}
      </div>
      {canWrite && (
        <>
          <PasswordInput
            label="Passphrase of an archive to take in, if it has one"
            visibilityToggleButtonProps={{ "aria-label": "Show the passphrase of the archive to take in" }}
            value={inPassphrase}
            onChange={(event) => setInPassphrase(event.currentTarget.value)}
          />
          <div className="form-buttons">
            <Button variant="default" onClick={() => input.current?.click()}>
              Take an archive in
            </Button>
          </div>
          <input
            ref={input}
            type="file"
            hidden
            aria-label="Archive to take in"
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
  return [
    `${countOf(added, "record")} came in, ${countOf(recordings, "recording")} among them; ${same} were here already.`,
    kept === 0 ? "" : `${kept} differ here: what this register says stands.`,
    ...new Set(notes),
  ]
    .filter((part) => part !== "")
    .join(" ");
}

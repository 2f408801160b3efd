import { Button, PasswordInput, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import type { HostApi, Workspace } from "../../electron/host-api.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { BackupPreview } from "../../electron/register/register-views.ts";
import type { BackupChoice } from "../../electron/register-host/register-api.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { backupWords, previewWords } from "./backup-words.ts";
import { NewPassphrase } from "./new-passphrase.tsx";

/** Backups beside the register and elsewhere, and going back to one after a look at it. */
export function BackupsPanel({ workspace }: { readonly workspace: Workspace }) {
  const { host, report } = useWorkspace();
  const [list, setList] = useState<HostApi["backups.read"]["reply"]>();
  const [place, setPlace] = useState("");
  const [passphrase, setPassphrase] = useState("");
  const [made, setMade] = useState("");
  const [looking, setLooking] = useState<string>();
  const [making, setMaking] = useState(false);
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace or a backup just made is worth another look
  useEffect(() => {
    host.call("backups.read", {}).then(setList, report);
  }, [host, report, workspace, made]);
  const make = (elsewhere: boolean) => {
    setMaking(true);
    const where = elsewhere
      ? { place: place.trim(), ...(passphrase !== "" && { passphrase: passphraseBytes(passphrase) }) }
      : {};
    host
      .call("backups.make", where)
      .then(({ path }) => setMade(`Made: ${path}`))
      .catch(report)
      .finally(() => setMaking(false));
  };
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="backups-title">
      <h2 id="backups-title" className="panel-title">
        Backups
      </h2>
      <p className="muted">One is made beside the register each day; the last ten are kept.</p>
      <table className="plain-table">
        <caption className="visually-hidden">Backups beside the register</caption>
        <thead className="visually-hidden">
          <tr>
            <th scope="col">Backup</th>
            <th scope="col">Size</th>
            <th scope="col">Action</th>
          </tr>
        </thead>
        <tbody>
          {(list?.backups ?? []).map(({ path, name, byteLength }) => (
            <tr key={path}>
              <td>{backupWords(name)}</td>
              <td className="number muted">{(byteLength / 1e6).toFixed(1)} MB</td>
              <td className="timeline-actions">
                <Button
                  size="xs"
                  variant="default"
                  aria-label={`Look at the backup ${backupWords(name)}`}
                  onClick={() => setLooking(path)}
                >
                  Look at it
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {canWrite && (
        <div className="form-buttons">
          <Button variant="default" disabled={making} onClick={() => make(false)}>
            Make a backup now
          </Button>
          <Button variant="default" onClick={() => setLooking("")}>
            Look at a backup elsewhere
          </Button>
        </div>
      )}
      {looking !== undefined && <BackupLook key={looking} path={looking} onClose={() => setLooking(undefined)} />}
      <form
        className="session-form"
        onSubmit={(event) => {
          event.preventDefault();
          make(true);
        }}
      >
        <div className="answer-fields">
          <TextInput
            className="answer-wide"
            label="Copy to a file, with its whole path"
            value={place}
            onChange={(event) => setPlace(event.currentTarget.value)}
          />
          <NewPassphrase
            label="Passphrase of the copy, if wanted"
            showLabel="Show the copy's passphrase"
            value={passphrase}
            onChange={setPassphrase}
          />
        </div>
        <Button type="submit" variant="default" disabled={making || place.trim() === ""}>
          Copy the register there
        </Button>
      </form>
      <p aria-live="polite" className="muted">
        {made}
      </p>
    </section>
  );
}

/** Shows what a backup holds before anything is replaced by it. */
function BackupLook({ path, onClose }: { readonly path: string; readonly onClose: () => void }) {
  const { host, apply, report } = useWorkspace();
  const [place, setPlace] = useState(path);
  const [filePassphrase, setFilePassphrase] = useState("");
  const [registerPassphrase, setRegisterPassphrase] = useState("");
  const [preview, setPreview] = useState<BackupPreview>();
  const choice: BackupChoice = {
    path: place.trim(),
    ...(filePassphrase !== "" && { filePassphrase: passphraseBytes(filePassphrase) }),
    ...(registerPassphrase !== "" && { registerPassphrase: passphraseBytes(registerPassphrase) }),
  };
  const isElsewhere = path === "";
  useEffect(() => {
    if (path !== "") host.call("backups.preview", { path }).then(setPreview, report);
  }, [host, report, path]);
  return (
    <form
      className="session-form backup-look"
      aria-label="Look at a backup"
      onSubmit={(event) => {
        event.preventDefault();
        host.call("backups.preview", choice).then(setPreview, report);
      }}
    >
      {isElsewhere && (
        <>
          <div className="answer-fields">
            <TextInput
              className="answer-wide"
              label="Backup, with its whole path"
              value={place}
              onChange={(event) => setPlace(event.currentTarget.value)}
            />
            <PasswordInput
              label="Its passphrase, if it has one"
              visibilityToggleButtonProps={{ "aria-label": "Show the backup's passphrase" }}
              value={filePassphrase}
              onChange={(event) => setFilePassphrase(event.currentTarget.value)}
            />
          </div>
          <Button type="submit" variant="default" disabled={place.trim() === ""}>
            Look at it
          </Button>
        </>
      )}
      {preview !== undefined && (
        <>
          <p>{previewWords(preview)}</p>
          {preview.needsPassphrase && (
            <PasswordInput
              label="Passphrase of the register in it"
              visibilityToggleButtonProps={{ "aria-label": "Show the passphrase of the register in the backup" }}
              value={registerPassphrase}
              onChange={(event) => setRegisterPassphrase(event.currentTarget.value)}
            />
          )}
          <p className="muted">
            Going back puts it in the place of everything in the register today; a copy of today is made first and stays
            among the backups.
          </p>
        </>
      )}
      <div className="form-buttons">
        {preview !== undefined && (
          <Button
            onClick={() =>
              void apply("backups.restore", choice).then((done) => {
                if (done) onClose();
              })
            }
          >
            Go back to this backup
          </Button>
        )}
        <Button variant="default" onClick={onClose}>
          Leave everything as it is
        </Button>
      </div>
    </form>
  );
}

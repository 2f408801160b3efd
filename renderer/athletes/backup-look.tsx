import { Button, PasswordInput, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import type { BackupChoice } from "../../electron/boundary/register-api.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { BackupPreview } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { previewWords } from "./backup-words.ts";

interface BackupLookProps {
  /** Where it lies; "" where the person is to say that. */
  readonly path: string;
  /** It has a passphrase of its own. */
  readonly isSealed: boolean;
  readonly onClose: () => void;
}

/** Shows what a backup holds before anything is replaced by it. */
export function BackupLook({ path, isSealed, onClose }: BackupLookProps) {
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
  const mustSay = path === "" || isSealed;
  useEffect(() => {
    if (!mustSay) host.call("backups.preview", { path }).then(setPreview, report);
  }, [host, report, path, mustSay]);
  return (
    <form
      className="session-form backup-look"
      aria-label="Look at a backup"
      onSubmit={(event) => {
        event.preventDefault();
        host.call("backups.preview", choice).then(setPreview, report);
      }}
    >
      {mustSay && (
        <>
          <div className="answer-fields">
            <TextInput
              className="answer-wide"
              autoFocus
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
          <p role="status">{previewWords(preview)}</p>
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
        <Button variant="default" autoFocus={!mustSay} onClick={onClose}>
          Leave everything as it is
        </Button>
      </div>
    </form>
  );
}

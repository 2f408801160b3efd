import { Button, PasswordInput, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import type { BackupChoice } from "../../electron/boundary/copy-requests.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { BackupPreview } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { previewWords } from "./backup-words.ts";

const prose = words.screens.backups;

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
      aria-label={prose.lookAtABackup}
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
              label={prose.wholePath}
              value={place}
              onChange={(event) => setPlace(event.currentTarget.value)}
            />
            <PasswordInput
              label={prose.itsPassphrase}
              visibilityToggleButtonProps={{ "aria-label": prose.showItsPassphrase }}
              value={filePassphrase}
              onChange={(event) => setFilePassphrase(event.currentTarget.value)}
            />
          </div>
          <Button type="submit" variant="default" disabled={place.trim() === ""}>
            {prose.lookAtIt}
          </Button>
        </>
      )}
      {preview !== undefined && (
        <>
          <p role="status">{previewWords(preview)}</p>
          {preview.needsPassphrase && (
            <PasswordInput
              label={prose.passphraseInIt}
              visibilityToggleButtonProps={{ "aria-label": prose.showPassphraseInIt }}
              value={registerPassphrase}
              onChange={(event) => setRegisterPassphrase(event.currentTarget.value)}
            />
          )}
          <p className="muted">{prose.whatGoingBackDoes}</p>
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
            {prose.goBack}
          </Button>
        )}
        <Button variant="default" autoFocus={!mustSay} onClick={onClose}>
          {prose.leaveEverything}
        </Button>
      </div>
    </form>
  );
}

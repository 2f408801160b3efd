import { Button, PasswordInput } from "@mantine/core";
import { useState } from "react";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { KnownCopy } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { copyTitle } from "./copy-titles.ts";

const prose = words.screens.backups;

interface EnvelopeCheckProps {
  readonly copy: KnownCopy;
  readonly onCheck: (copy: KnownCopy, passphrase: Uint8Array) => void;
  readonly onClose: () => void;
}

/** Asks for the passphrase that a copy has of its own, to check what is in it. */
export function EnvelopeCheck({ copy, onCheck, onClose }: EnvelopeCheckProps) {
  const [passphrase, setPassphrase] = useState("");
  return (
    <form
      className="session-form backup-look"
      aria-label={prose.checkACopy}
      onSubmit={(event) => {
        event.preventDefault();
        onCheck(copy, passphraseBytes(passphrase));
        onClose();
      }}
    >
      <p>{prose.onlyWithItsPassphrase(copyTitle(copy))}</p>
      <PasswordInput
        autoFocus
        label={prose.passphraseOfThisCopy}
        visibilityToggleButtonProps={{ "aria-label": prose.showPassphraseOfThisCopy }}
        value={passphrase}
        onChange={(event) => setPassphrase(event.currentTarget.value)}
      />
      <div className="form-buttons">
        <Button type="submit" disabled={passphrase === ""}>
          {prose.checkThisCopy}
        </Button>
        <Button variant="default" onClick={onClose}>
          {prose.leaveItUnchecked}
        </Button>
      </div>
    </form>
  );
}

interface GoneQuestionProps {
  readonly copy: KnownCopy;
  readonly onClose: () => void;
}

/** Asks once more before a copy goes off the list. */
export function GoneQuestion({ copy, onClose }: GoneQuestionProps) {
  const { apply } = useWorkspace();
  const forget = () =>
    void apply("copies.forget", { key: copy.key }).then((done) => {
      if (done) onClose();
    });
  return (
    <section className="session-form backup-look" aria-label={prose.isThisCopyGone}>
      <p>{prose.wasItDeleted(copyTitle(copy), copy.path)}</p>
      <div className="form-buttons">
        <Button onClick={forget}>{prose.itWasDeleted}</Button>
        <Button variant="default" autoFocus onClick={onClose}>
          {prose.keepItInList}
        </Button>
      </div>
    </section>
  );
}

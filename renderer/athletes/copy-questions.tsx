import { Button, PasswordInput } from "@mantine/core";
import { useState } from "react";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { KnownCopy } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { copyTitle } from "./copy-titles.ts";

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
      aria-label="Check a copy with its passphrase"
      onSubmit={(event) => {
        event.preventDefault();
        onCheck(copy, passphraseBytes(passphrase));
        onClose();
      }}
    >
      <p>{copyTitle(copy)}: what is in it can only be checked with its own passphrase.</p>
      <PasswordInput
        autoFocus
        label="Passphrase of this copy"
        visibilityToggleButtonProps={{ "aria-label": "Show the passphrase of this copy" }}
        value={passphrase}
        onChange={(event) => setPassphrase(event.currentTarget.value)}
      />
      <div className="form-buttons">
        <Button type="submit" disabled={passphrase === ""}>
          Check this copy
        </Button>
        <Button variant="default" onClick={onClose}>
          Leave it unchecked
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
    <section className="session-form backup-look" aria-label="Is this copy gone?">
      <p>
        {copyTitle(copy)}, {copy.path}: was it deleted, wherever it lay? Off the list, erasing a person no longer names
        it.
      </p>
      <div className="form-buttons">
        <Button onClick={forget}>It was deleted: take it off the list</Button>
        <Button variant="default" autoFocus onClick={onClose}>
          Keep it in the list
        </Button>
      </div>
    </section>
  );
}

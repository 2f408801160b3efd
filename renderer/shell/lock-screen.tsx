import { Button, Checkbox, PasswordInput } from "@mantine/core";
import { useState } from "react";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { words } from "../words/words.ts";
import { ErrorToast } from "./error-toast.tsx";
import { LockedWatch } from "./locked-watch.tsx";
import { usePassphraseStore } from "./use-passphrase-store.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.lock;

/** Stands before everything while the register is locked; nothing of it is drawn behind. */
export function LockScreen({ file }: { readonly file: string }) {
  const { apply, busy } = useWorkspace();
  const store = usePassphraseStore();
  const [passphrase, setPassphrase] = useState("");
  const [remember, setRemember] = useState(false);
  return (
    <main className="waiting">
      <form
        className="panel panel-padded lock-form"
        onSubmit={(event) => {
          event.preventDefault();
          void apply("register.unlock", { passphrase: passphraseBytes(passphrase), ...(remember && { remember }) });
          setPassphrase("");
        }}
      >
        <h1 className="area-title">{prose.theRegisterIsLocked}</h1>
        <p className="muted">{file}</p>
        <PasswordInput
          label={prose.passphrase}
          autoComplete="current-password"
          autoFocus
          visibilityToggleButtonProps={{ "aria-label": prose.showPassphrase }}
          value={passphrase}
          onChange={(event) => setPassphrase(event.currentTarget.value)}
        />
        {store.state !== "absent" && (
          <Checkbox
            label={prose.remember}
            checked={remember}
            onChange={(event) => setRemember(event.currentTarget.checked)}
          />
        )}
        <Button type="submit" disabled={passphrase === "" || busy}>
          {prose.unlock}
        </Button>
      </form>
      <LockedWatch />
      <ErrorToast />
    </main>
  );
}

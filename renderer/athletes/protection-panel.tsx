import { Button, Checkbox, NativeSelect, PasswordInput } from "@mantine/core";
import { useState } from "react";
import type { RegisterView } from "../../electron/boundary/register-view.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { usePassphraseStore } from "../shell/use-passphrase-store.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { NewPassphrase } from "./new-passphrase.tsx";

const minutesOffered = [0, 5, 10, 15, 30, 60];

/** The passphrase of the register, and when it locks itself. */
export function ProtectionPanel({ register }: { readonly register: RegisterView }) {
  const { host, apply, report } = useWorkspace();
  const store = usePassphraseStore();
  const [passphrase, setPassphrase] = useState("");
  const [again, setAgain] = useState("");
  const [problem, setProblem] = useState("");
  const { encrypted, lockAfterMinutes, countsWhileLocked, readOnlyBecause } = register;
  const canWrite = readOnlyBecause === undefined;
  const keep = async () => {
    if (passphrase !== again) return setProblem("The two passphrases differ.");
    const bytes = passphraseBytes(passphrase);
    const { weakness = "" } = await host.call("passphrase.weigh", { passphrase: bytes });
    setProblem(weakness);
    if (weakness !== "") return;
    const sent = apply("register.setPassphrase", { passphrase: bytes });
    setPassphrase("");
    setAgain("");
    if (await sent) store.look();
  };
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="protection-title">
      <h2 id="protection-title" className="panel-title">
        Passphrase
      </h2>
      <p>
        {encrypted
          ? "A passphrase protects names, notes, findings and recordings. Without it nobody can read them, and nobody can bring it back when it is forgotten."
          : "No passphrase is set: what protects the data when this computer is lost is the encryption of its disk. A passphrase encrypts names, notes, findings and recordings; nobody can bring it back when it is forgotten."}
      </p>
      {canWrite && (
        <form
          className="session-form"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            keep().catch(report);
          }}
        >
          <div className="answer-fields">
            <NewPassphrase
              label={encrypted ? "New passphrase" : "Passphrase"}
              showLabel="Show the passphrase"
              value={passphrase}
              onChange={setPassphrase}
            />
            <PasswordInput
              label="The same again"
              autoComplete="new-password"
              visibilityToggleButtonProps={{ "aria-label": "Show the passphrase typed again" }}
              value={again}
              onChange={(event) => setAgain(event.currentTarget.value)}
            />
          </div>
          {problem !== "" && (
            <p className="caution finding" role="alert">
              {problem}
            </p>
          )}
          <div className="form-buttons">
            <Button type="submit" variant="default" disabled={passphrase === ""}>
              {encrypted ? "Change the passphrase" : "Set the passphrase"}
            </Button>
            {encrypted && (
              <Button variant="default" onClick={() => void apply("register.removePassphrase", {}).then(store.look)}>
                Remove the passphrase
              </Button>
            )}
            {store.state === "holds it" && (
              <Button variant="default" onClick={() => void apply("register.forgetPassphrase", {}).then(store.look)}>
                Forget it on this computer
              </Button>
            )}
          </div>
        </form>
      )}
      {encrypted && (
        <div className="form-buttons locking">
          <NativeSelect
            label="Locks itself when nobody is there for"
            value={String(lockAfterMinutes)}
            onChange={(event) => void apply("register.lockAfter", { minutes: Number(event.currentTarget.value) })}
            data={[...new Set([...minutesOffered, lockAfterMinutes])]
              .sort((first, second) => first - second)
              .map((minutes) => ({
                value: String(minutes),
                label: minutes === 0 ? "never" : `${minutes} minutes`,
              }))}
          />
          <Checkbox
            label="While it is locked, show how many recordings of a watched folder came in, without names"
            checked={countsWhileLocked}
            onChange={(event) => void apply("register.countWhileLocked", { counts: event.currentTarget.checked })}
          />
          <Button onClick={() => void apply("register.lock", {})}>Lock now</Button>
        </div>
      )}
    </section>
  );
}

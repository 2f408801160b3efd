import { Button, Checkbox, NativeSelect, PasswordInput } from "@mantine/core";
import { useState } from "react";
import type { RegisterView } from "../../electron/boundary/register-view.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { usePassphraseStore } from "../shell/use-passphrase-store.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { NewPassphrase } from "./new-passphrase.tsx";

const prose = words.screens.registerWords;

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
    if (passphrase !== again) return setProblem(prose.passphrasesDiffer);
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
        {prose.passphrase}
      </h2>
      <p>{encrypted ? prose.whatItProtects : prose.noPassphrase}</p>
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
              label={encrypted ? prose.newPassphrase : prose.passphrase}
              showLabel={prose.showPassphrase}
              value={passphrase}
              onChange={setPassphrase}
            />
            <PasswordInput
              label={prose.theSameAgain}
              autoComplete="new-password"
              visibilityToggleButtonProps={{ "aria-label": prose.showTypedAgain }}
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
              {encrypted ? prose.changePassphrase : prose.setPassphrase}
            </Button>
            {encrypted && (
              <Button variant="default" onClick={() => void apply("register.removePassphrase", {}).then(store.look)}>
                {prose.removePassphrase}
              </Button>
            )}
            {store.state === "holds it" && (
              <Button variant="default" onClick={() => void apply("register.forgetPassphrase", {}).then(store.look)}>
                {prose.forgetIt}
              </Button>
            )}
          </div>
        </form>
      )}
      {encrypted && (
        <div className="form-buttons locking">
          <NativeSelect
            label={prose.locksItself}
            value={String(lockAfterMinutes)}
            onChange={(event) => void apply("register.lockAfter", { minutes: Number(event.currentTarget.value) })}
            data={[...new Set([...minutesOffered, lockAfterMinutes])]
              .sort((first, second) => first - second)
              .map((minutes) => ({
                value: String(minutes),
                label: minutes === 0 ? prose.never : prose.minutes(minutes),
              }))}
          />
          <Checkbox
            label={prose.whileLockedShow}
            checked={countsWhileLocked}
            onChange={(event) => void apply("register.countWhileLocked", { counts: event.currentTarget.checked })}
          />
          <Button onClick={() => void apply("register.lock", {})}>{prose.lockNow}</Button>
        </div>
      )}
    </section>
  );
}

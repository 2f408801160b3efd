import { PasswordInput } from "@mantine/core";
import { useEffect, useId, useState } from "react";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.registerWords;

/** Long enough not to weigh each letter of a word that is being typed. */
const pauseMilliseconds = 400;

interface NewPassphraseProps {
  readonly label: string;
  /** What the button that shows the letters is called. */
  readonly showLabel: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A field for a passphrase that will protect something from now on; a line under the fields says how strong it is. */
export function NewPassphrase({ label, showLabel, value, onChange }: NewPassphraseProps) {
  const line = useId();
  const words = useStrengthWords(value);
  return (
    <>
      <PasswordInput
        label={label}
        autoComplete="new-password"
        aria-describedby={line}
        visibilityToggleButtonProps={{ "aria-label": showLabel }}
        value={value}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      <p id={line} role="status" className="muted passphrase-strength">
        {words}
      </p>
    </>
  );
}

function useStrengthWords(passphrase: string): string {
  const { host, report } = useWorkspace();
  const [words, setWords] = useState("");
  useEffect(() => {
    if (passphrase === "") return setWords("");
    let isCurrent = true;
    const pause = setTimeout(() => {
      host
        .call("passphrase.weigh", { passphrase: passphraseBytes(passphrase) })
        .then(({ weakness = prose.guessingTakesLong }) => {
          if (isCurrent) setWords(weakness);
        })
        .catch(report);
    }, pauseMilliseconds);
    return () => {
      isCurrent = false;
      clearTimeout(pause);
    };
  }, [host, report, passphrase]);
  return words;
}

import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { passphraseBytes } from "../../electron/register/passphrase-bytes.ts";
import type { KnownCopy } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { BackupLook } from "./backup-look.tsx";
import { CopiesList } from "./copies-list.tsx";
import { EnvelopeCheck, GoneQuestion } from "./copy-questions.tsx";
import { NewPassphrase } from "./new-passphrase.tsx";
import { useCopies } from "./use-copies.ts";

const prose = words.screens.backups;

/** What is asked about one copy, or about a backup that is not in the list. */
interface Asked {
  readonly what: "look" | "open" | "gone";
  readonly copy?: KnownCopy;
}

/** Every copy of the register that is known, making more, checking them, and going back to one after a look at it. */
export function BackupsPanel({ workspace }: { readonly workspace: Workspace }) {
  const { host, report } = useWorkspace();
  const copies = useCopies(workspace);
  const [made, setMade] = useState("");
  const [making, setMaking] = useState(false);
  const [asked, setAsked] = useState<Asked>();
  const opener = useRef<Element>(null);
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  const { list, outcome: said, isChecking } = copies;
  const ask = (question: Asked) => {
    opener.current = document.activeElement;
    setAsked(question);
  };
  const close = () => {
    setAsked(undefined);
    // The question goes with what had the focus: the keyboard goes on where it was asked.
    if (opener.current instanceof HTMLElement) opener.current.focus();
  };
  const make = (where: { place?: string; passphrase?: Uint8Array }, onMade?: () => void) => {
    setMaking(true);
    host
      .call("backups.make", where)
      .then(({ path }) => {
        setMade(prose.made(path, where.passphrase === undefined ? "" : prose.underItsOwnPassphrase));
        onMade?.();
      })
      .catch(report)
      .finally(() => {
        setMaking(false);
        copies.look();
      });
  };
  return (
    <section className="panel panel-padded session-statements copies-panel" aria-labelledby="backups-title">
      <h2 id="backups-title" className="panel-title">
        {prose.copies}
      </h2>
      <p className="muted">{prose.madeEachDay(list?.folder ?? prose.itsFolder)}</p>
      {list?.notTold.map((sentence) => (
        <p key={sentence} className="caution finding">
          {sentence}
        </p>
      ))}
      {list?.copies.length === 0 && <p className="muted">{prose.noCopyYet}</p>}
      <CopiesList
        copies={list?.copies ?? []}
        canWrite={canWrite}
        onLook={(copy) => ask({ what: "look", copy })}
        onOpenEnvelope={(copy) => ask({ what: "open", copy })}
        onGone={(copy) => ask({ what: "gone", copy })}
      />
      <div className="form-buttons">
        {isChecking ? (
          <Button variant="default" onClick={copies.stop}>
            {prose.stopChecking}
          </Button>
        ) : (
          <Button variant="default" disabled={!list?.copies.length} onClick={copies.checkAll}>
            {prose.checkEveryCopy}
          </Button>
        )}
        {canWrite && (
          <>
            <Button variant="default" disabled={making} onClick={() => make({})}>
              {prose.makeBackupNow}
            </Button>
            <Button variant="default" onClick={() => ask({ what: "look" })}>
              {prose.lookElsewhere}
            </Button>
          </>
        )}
      </div>
      <p role="status" className="muted">
        {said}
      </p>
      {asked?.what === "look" && (
        <BackupLook
          key={asked.copy?.key ?? ""}
          path={asked.copy?.path ?? ""}
          isSealed={isSealed(asked.copy)}
          onClose={close}
        />
      )}
      {asked?.what === "open" && asked.copy && (
        <EnvelopeCheck key={asked.copy.key} copy={asked.copy} onCheck={copies.checkOne} onClose={close} />
      )}
      {asked?.what === "gone" && asked.copy && <GoneQuestion copy={asked.copy} onClose={close} />}
      <CopyThere disabled={making} onCopy={make} />
      <p aria-live="polite" className="muted">
        {made}
      </p>
    </section>
  );
}

/** A kept backup of another register has a passphrase of its own inside, and no envelope. */
function isSealed(copy: KnownCopy | undefined): boolean {
  return copy?.kind === "backup elsewhere" && copy.protection === "a passphrase of its own";
}

interface CopyThereProps {
  readonly disabled: boolean;
  readonly onCopy: (where: { readonly place: string; readonly passphrase?: Uint8Array }, onMade: () => void) => void;
}

/** Copies the register to a place of the person's choice. */
function CopyThere({ disabled, onCopy }: CopyThereProps) {
  const [place, setPlace] = useState("");
  const [passphrase, setPassphrase] = useState("");
  return (
    <form
      className="session-form"
      onSubmit={(event) => {
        event.preventDefault();
        // Kept where it was refused: asked once more with an empty field, the copy would be written unprotected.
        onCopy({ place: place.trim(), ...(passphrase !== "" && { passphrase: passphraseBytes(passphrase) }) }, () =>
          setPassphrase(""),
        );
      }}
    >
      <div className="answer-fields">
        <TextInput
          className="answer-wide"
          label={prose.copyToFile}
          value={place}
          onChange={(event) => setPlace(event.currentTarget.value)}
        />
        <NewPassphrase
          label={prose.passphraseOfCopy}
          showLabel={prose.showPassphraseOfCopy}
          value={passphrase}
          onChange={setPassphrase}
        />
      </div>
      <Button type="submit" variant="default" disabled={disabled || place.trim() === ""}>
        {prose.copyThere}
      </Button>
    </form>
  );
}

import { Button } from "@mantine/core";
import { checkWords, copyTroubles, protectionWords } from "../../electron/register/copies/copy-words.ts";
import type { KnownCopy } from "../../electron/register/register-views.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { bytesWords, copyTitle, timeWords } from "./copy-titles.ts";

const prose = words.screens.backups;

interface CopiesListProps {
  readonly copies: readonly KnownCopy[];
  readonly canWrite: boolean;
  readonly onLook: (copy: KnownCopy) => void;
  readonly onOpenEnvelope: (copy: KnownCopy) => void;
  readonly onGone: (copy: KnownCopy) => void;
}

/** Every copy that is known, one below the other: what it is and where, and whether it is still what it should be. */
export function CopiesList({ copies, ...actions }: CopiesListProps) {
  return (
    <ul className="copies" aria-label={prose.copiesOfRegister}>
      {copies.map((copy) => (
        <li key={copy.key} className="copy">
          <CopyFacts copy={copy} />
          <CopyActions copy={copy} {...actions} />
          {copyTroubles(copy).map((sentence) => (
            <p key={sentence} className="caution finding copy-trouble">
              {sentence}
            </p>
          ))}
        </li>
      ))}
    </ul>
  );
}

function CopyFacts({ copy }: { readonly copy: KnownCopy }) {
  const { path, state, byteLength } = copy;
  return (
    <>
      <div className="copy-where">
        <strong>{copyTitle(copy)}</strong>
        <span className="muted copy-path">{path}</span>
      </div>
      <div>
        <span className="copy-state">{state === "there" ? prose.there : prose.cannotBeReached}</span>
        {byteLength !== undefined && <span className="number muted">, {bytesWords(byteLength)}</span>}
      </div>
      <div>{underWords(copy)}</div>
      <div>{sentenceCase(checkWords(copy, timeWords))}</div>
    </>
  );
}

function CopyActions({
  copy,
  canWrite,
  onLook,
  onOpenEnvelope,
  onGone,
}: Omit<CopiesListProps, "copies"> & {
  readonly copy: KnownCopy;
}) {
  const { state, kind, protection } = copy;
  const title = copyTitle(copy);
  const isSealed = protection === "a passphrase of its own" && kind.endsWith("elsewhere");
  return (
    <div className="copy-actions">
      {state === "there" && kind !== "archive elsewhere" && (
        <Button size="xs" variant="default" aria-label={prose.lookAt(title)} onClick={() => onLook(copy)}>
          {prose.lookAtIt}
        </Button>
      )}
      {state === "there" && isSealed && (
        <Button
          size="xs"
          variant="default"
          aria-label={prose.checkWithPassphrase(title)}
          onClick={() => onOpenEnvelope(copy)}
        >
          {prose.checkIt}
        </Button>
      )}
      {state === "unreachable" && kind.endsWith("elsewhere") && canWrite && (
        <Button size="xs" variant="default" aria-label={prose.noLongerThereOf(title)} onClick={() => onGone(copy)}>
          {prose.noLongerThere}
        </Button>
      )}
    </div>
  );
}

function underWords(copy: KnownCopy): string {
  if (copy.protection === "not known") return prose.protectionNotKnown;
  return copy.protection === "none" ? prose.noPassphrase : prose.under(protectionWords(copy));
}

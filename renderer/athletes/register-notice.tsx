import { Button } from "@mantine/core";
import { useEffect } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.registerWords;

/** What must be known of the register before working in it, and the one thing to do about it. */
export function RegisterNotice({ workspace }: { readonly workspace: Workspace }) {
  const { apply } = useWorkspace();
  const { register } = workspace;
  if (register === undefined) {
    return (
      <section className="panel panel-padded">
        <p>{prose.withoutARegister}</p>
      </section>
    );
  }
  const {
    kind,
    problem,
    file,
    readOnlyBecause,
    damage,
    unfinishedErasure,
    backupTrouble,
    encrypted,
    hasOwn,
    conversion,
    protectionTroubles,
  } = register;
  if (kind === "none") {
    return (
      <section className="panel panel-padded session-statements" aria-label={prose.theRegister}>
        <p className="caution finding">{problem === undefined ? prose.noRegister : prose.nothingTouched(problem)}</p>
        <p className="muted">{prose.liesAt(file)}</p>
        <div className="form-buttons">
          <Button onClick={() => void apply("register.openOwn", {})}>
            {hasOwn ? prose.tryAgain : prose.startYourOwn}
          </Button>
          <Button variant="default" onClick={() => void apply("workspace.openDemo", {})}>
            {prose.openTheDemo}
          </Button>
        </div>
      </section>
    );
  }
  return (
    <section className="register-notice" aria-label={prose.theRegister}>
      {kind === "demo" && (
        <div className="register-demo">
          <p>
            <strong>{prose.demo}</strong> {prose.demoIsACopy(hasOwn ? prose.goBackTo : prose.start)}
          </p>
          <Button onClick={() => void apply("register.openOwn", {})}>
            {hasOwn ? prose.openYourOwn : prose.startYourOwn}
          </Button>
        </div>
      )}
      {readOnlyBecause !== undefined && <p className="caution finding">{readOnlyBecause}</p>}
      {damage !== undefined && <p className="caution finding">{damage}</p>}
      {unfinishedErasure !== undefined && <p className="caution finding">{unfinishedErasure}</p>}
      {backupTrouble !== undefined && <p className="caution finding">{backupTrouble}</p>}
      {conversion !== undefined && <ConversionNotice {...conversion} />}
      {protectionTroubles.map((trouble) => (
        <p key={trouble} className="caution finding">
          {trouble}
        </p>
      ))}
      {kind === "own" && !encrypted && <p className="muted">{prose.protectedByTheDisk}</p>}
    </section>
  );
}

/** How far the register's fields are on their way under another protection; looked at again each second. */
function ConversionNotice({ done, total }: { readonly done: number; readonly total: number }) {
  const { apply } = useWorkspace();
  useEffect(() => {
    const timer = setInterval(() => void apply("workspace.read", {}), 1000);
    return () => clearInterval(timer);
  }, [apply]);
  return (
    <div className="register-conversion">
      {/* Only this is announced: figures that change each second would never let a screen reader go on. */}
      <p role="status">{prose.writtenAgain}</p>
      <p>
        <progress aria-label={prose.writtenAgainProgress} value={done} max={total} />{" "}
        <span className="number">{prose.doneOf(done, total)}</span>
      </p>
    </div>
  );
}

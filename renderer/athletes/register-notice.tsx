import { Button } from "@mantine/core";
import { useEffect } from "react";
import { countOf } from "../../core/ground/plain-words.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";

/** What must be known of the register before working in it, and the one thing to do about it. */
export function RegisterNotice({ workspace }: { readonly workspace: Workspace }) {
  const { apply } = useWorkspace();
  const { register } = workspace;
  if (register === undefined) {
    return (
      <section className="panel panel-padded">
        <p>This program was started without a register; sessions live until it is closed.</p>
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
      <section className="panel panel-padded session-statements" aria-label="The register">
        <p className="caution finding">
          {problem === undefined ? "No register is open." : `${problem} Nothing of it was touched.`}
        </p>
        <p className="muted">The register lies at {file}.</p>
        <div className="form-buttons">
          <Button onClick={() => void apply("register.openOwn", {})}>
            {hasOwn ? "Try to open it again" : "Start your own register"}
          </Button>
          <Button variant="default" onClick={() => void apply("workspace.openDemo", {})}>
            Open the simulated demo world
          </Button>
        </div>
      </section>
    );
  }
  return (
    <section className="register-notice" aria-label="The register">
      {kind === "demo" && (
        <div className="register-demo">
          <p>
            <strong>Demo.</strong> Invented athletes, simulated recordings: a copy to try everything on. It is thrown
            away when you {hasOwn ? "go back to" : "start"} your own register.
          </p>
          <Button onClick={() => void apply("register.openOwn", {})}>
            {hasOwn ? "Open your own register" : "Start your own register"}
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
      {kind === "own" && !encrypted && (
        <p className="muted">
          The register has no passphrase: what protects it when this computer is lost is the encryption of its disk.
        </p>
      )}
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
      <p role="status">
        Everything is being written again under the register's new protection. You can go on working; it is finished at
        the next opening if the program is closed.
      </p>
      <p>
        <progress aria-label="Written again under the new protection" value={done} max={total} />{" "}
        <span className="number">
          {done} of {countOf(total, "part")}
        </span>
      </p>
    </div>
  );
}

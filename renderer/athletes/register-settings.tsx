import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";
import { ArchivesPanel } from "./archives-panel.tsx";
import { BackupsPanel } from "./backups-panel.tsx";
import { BinPanel } from "./bin-panel.tsx";
import { LimitsPanel } from "./limits-panel.tsx";
import { ProtectionPanel } from "./protection-panel.tsx";

const prose = words.screens.registerWords;

/** The register as a whole: the clinic's limits, who can read it, copies of it, and what was thrown away. */
export function RegisterSettings({ workspace }: { readonly workspace: Workspace }) {
  const { register } = workspace;
  if (register === undefined) return null;
  return (
    <>
      <p className="muted">{prose.thisLiesAt(register.file)}</p>
      <div className="settings-columns">
        <LimitsPanel workspace={workspace} />
        <ProtectionPanel register={register} />
        <ArchivesPanel workspace={workspace} />
        <BackupsPanel workspace={workspace} />
        <BinPanel workspace={workspace} />
      </div>
    </>
  );
}

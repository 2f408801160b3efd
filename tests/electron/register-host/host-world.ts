import { onTestFinished } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { Host } from "../../../electron/boundary/host-api.ts";
import type { Workspace } from "../../../electron/boundary/workspace-view.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import type { Circumstances } from "../../../electron/register/register-writes.ts";
import { RegisterHome } from "../../../electron/register-host/register-home.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { directHost } from "../direct-host.ts";
import { temporaryFolder, testCircumstances } from "../register/register-world.ts";
import { describedSession, temporaryFolder as sampleFolder } from "../simulated-recordings.ts";

export interface HostWorldOptions {
  readonly dataFolder?: string;
  readonly circumstances?: Circumstances;
}

/** A program with a register of its own in a temporary folder; its demo world is one simulated session. */
export interface HostWorld {
  readonly host: Host;
  readonly home: RegisterHome;
  readonly dataFolder: string;
  /** Closes it, as the program's end does. */
  close(): void;
}

export async function hostWorld(options: HostWorldOptions = {}): Promise<HostWorld> {
  const dataFolder = options.dataFolder ?? temporaryFolder();
  const samples = sampleFolder();
  samples.write(describedSession(), "month-7");
  onTestFinished(samples.remove);
  const workspace = new WorkspaceState(defaultSettings, samples.path);
  const home = new RegisterHome({
    dataFolder,
    workspace,
    circumstances: options.circumstances ?? testCircumstances(),
    waitMilliseconds: 0,
  });
  await home.begin();
  let isOpen = true;
  const close = () => {
    if (isOpen) home.close();
    isOpen = false;
  };
  onTestFinished(close);
  return { host: directHost(makeHandlers(workspace, "browser", home)), home, dataFolder, close };
}

/** One with the person's own register, one athlete in it. */
export async function ownWorld(options: HostWorldOptions = {}) {
  const world = await hostWorld(options);
  await world.host.call("register.openOwn", {});
  const athlete = crypto.randomUUID();
  await world.host.call("records.save", {
    record: { kind: "athletes", id: athlete, content: { code: "A-1", name: "Ylva Brekke" } },
  });
  return { ...world, athlete };
}

/** The register as the workspace tells of it. */
export function registerOf({ register }: Workspace) {
  if (register === undefined) throw new Error("The workspace tells of no register.");
  return register;
}

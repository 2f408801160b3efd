import { existsSync } from "node:fs";
import { defaultSettings } from "../core/settings.ts";
import { sampleTracesFolder } from "./program-folders.ts";
import { WorkspaceState } from "./workspace.ts";

/** The state a start begins with: the demo world, ready to explore, where this installation carries it. */
export function openWorkspace(sampleTraces: string = sampleTracesFolder()): WorkspaceState {
  const workspace = new WorkspaceState(defaultSettings, sampleTraces);
  if (existsSync(sampleTraces)) workspace.openDemo();
  return workspace;
}

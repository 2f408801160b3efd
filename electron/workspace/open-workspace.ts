import { defaultSettings } from "../../core/settings/settings.ts";
import { dataFolder } from "../layouts/data-folder.ts";
import { LayoutShelf } from "../layouts/layout-shelf.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { WorkspaceState } from "./workspace.ts";

/** The state a start begins with: the demo world, ready to explore, where this installation carries it. */
export function openWorkspace(sampleTraces: string): WorkspaceState {
  const workspace = new WorkspaceState(defaultSettings, sampleTraces, new LayoutShelf(dataFolder()));
  try {
    workspace.openDemo();
  } catch (error) {
    // Without the demo's recordings the program starts empty; asking for the demo then says that they are missing.
    if (!(error instanceof RequestRefused)) throw error;
  }
  return workspace;
}

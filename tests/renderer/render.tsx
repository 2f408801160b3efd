import { MantineProvider } from "@mantine/core";
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import type { Host } from "../../electron/boundary/host-api.ts";
import { WorkspaceProvider } from "../../renderer/shell/workspace.tsx";

const silentHost: Host = { call: () => Promise.reject(new Error("A drawing asked the host for something.")) };

/** The markup of a screen part, inside the providers every part stands in. */
export function markupOf(part: ReactNode): string {
  return renderToStaticMarkup(
    <MantineProvider>
      <WorkspaceProvider host={silentHost}>{part}</WorkspaceProvider>
    </MantineProvider>,
  );
}

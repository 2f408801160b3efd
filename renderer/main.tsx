import "@fontsource/source-sans-3/400.css";
import "@fontsource/source-sans-3/600.css";
import "./shell/mantine-styles.ts";
import "./shell/tokens.css";
import "./shell/base.css";
import "./shell/controls.css";
import { MantineProvider } from "@mantine/core";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import type { Host } from "../electron/boundary/host-api.ts";
import { Application } from "./application.tsx";
import { chooseHost } from "./shell/host.ts";
import { theme, tokensResolver } from "./shell/theme.ts";
import { WorkspaceProvider } from "./shell/workspace.tsx";

declare global {
  interface Window {
    /** The host as the window's preload exposes it. */
    readonly counterpoise?: Host;
  }
}

const place = document.getElementById("application");
if (place === null) throw new Error("The page has no place for the application.");

const host = chooseHost({
  ...(window.counterpoise === undefined ? {} : { counterpoise: window.counterpoise }),
  location: window.location,
  history: window.history,
  storage: storageOfTab(),
  fetch: window.fetch.bind(window),
});

/** A browser told to keep nothing throws when it is asked: then each loading of the page needs an address of its own. */
function storageOfTab(): Storage | undefined {
  try {
    return window.sessionStorage;
  } catch {
    return undefined;
  }
}

createRoot(place).render(
  <StrictMode>
    <MantineProvider theme={theme} cssVariablesResolver={tokensResolver} defaultColorScheme="auto">
      <WorkspaceProvider host={host}>
        <Application />
      </WorkspaceProvider>
    </MantineProvider>
  </StrictMode>,
);

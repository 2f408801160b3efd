import { spawn } from "node:child_process";
import { platform } from "node:process";
import { pathToFileURL } from "node:url";

/** Whether there is a browser that can be asked. */
export function opensBrowsers(): boolean {
  return openerOf() !== undefined;
}

/**
 * Opens a page on the disk in the default browser, where there is one. A browser that does not come costs nothing: an
 * address has been printed, and a person can open it by hand.
 */
export function openBrowser(path: string): void {
  const opener = openerOf();
  if (opener === undefined) return;
  const parameters = [...opener.before, pathToFileURL(path).href];
  const child = spawn(opener.command, parameters, { detached: true, stdio: "ignore" });
  child.on("error", () => {});
  child.unref();
}

function openerOf(): { readonly command: string; readonly before: readonly string[] } | undefined {
  if (process.env.CI || process.env.COUNTERPOISE_NO_BROWSER) return undefined;
  if (platform === "darwin") return { command: "open", before: [] };
  if (platform === "win32") return { command: "rundll32", before: ["url.dll,FileProtocolHandler"] };
  const hasDisplay = Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
  return hasDisplay ? { command: "xdg-open", before: [] } : undefined;
}

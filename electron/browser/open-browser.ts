import { spawn } from "node:child_process";
import { platform } from "node:process";

/**
 * Opens an address in the default browser, where there is one. Never fails: the address has been printed, and a person
 * can open it by hand.
 */
export function openBrowser(url: string): void {
  const opener = openerOf();
  if (opener === undefined) return;
  try {
    const child = spawn(opener.command, [...opener.before, url], { detached: true, stdio: "ignore" });
    child.on("error", () => {});
    child.unref();
  } catch {
    // No such program, no more processes: the printed address remains.
  }
}

function openerOf(): { readonly command: string; readonly before: readonly string[] } | undefined {
  if (process.env.CI || process.env.COUNTERPOISE_NO_BROWSER) return undefined;
  if (platform === "darwin") return { command: "open", before: [] };
  if (platform === "win32") return { command: "rundll32", before: ["url.dll,FileProtocolHandler"] };
  const hasDisplay = Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
  return hasDisplay ? { command: "xdg-open", before: [] } : undefined;
}

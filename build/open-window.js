import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * Opens the Electron window, or serves the same application on a loopback address where Electron cannot be had.
 * @returns the exit code of what ran.
 */
export function openWindow(root, runtime) {
  const electron = findElectron(root, runtime);
  if (electron.path !== undefined) {
    return spawnSync(electron.path, [root], { stdio: "inherit" }).status ?? 3;
  }
  process.stderr.write(`${electron.reason}, so the same application is served to the browser on this computer only.\n`);
  return spawnSync(runtime, [join(root, "dist/electron/serve.js")], { stdio: "inherit" }).status ?? 3;
}

function findElectron(root, runtime) {
  if (process.platform === "linux" && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) {
    return { reason: "There is no display for an Electron window" };
  }
  if (process.platform === "linux" && process.getuid?.() === 0) {
    return { reason: "Electron keeps its sandbox on and therefore does not run as root" };
  }
  const folder = join(root, "node_modules/electron");
  const executable = () => {
    const name = join(folder, "path.txt");
    const path = existsSync(name) ? join(folder, "dist", readFileSync(name, "utf8").trim()) : "";
    return path !== "" && existsSync(path) ? path : undefined;
  };
  if (executable() === undefined) {
    process.stderr.write("Fetching Electron (once) …\n");
    spawnSync(runtime, [join(folder, "install.js")], { stdio: "ignore", timeout: 300_000 });
  }
  const path = executable();
  return path === undefined ? { reason: "Electron's program could not be downloaded" } : { path };
}

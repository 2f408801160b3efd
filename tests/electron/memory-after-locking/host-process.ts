import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import type { Host } from "../../../electron/boundary/host-api.ts";
import { programFolder } from "../../../electron/program/program-folders.ts";
import { chooseHost } from "../../../renderer/shell/host.ts";

/** The application as it serves a browser, in a process of its own, asked as its page asks. */
export interface HostProcess {
  readonly pid: number;
  readonly host: Host;
  end(): Promise<void>;
}

export async function startHostProcess(dataFolder: string): Promise<HostProcess> {
  const environment = { ...process.env, COUNTERPOISE_NO_BROWSER: "1", COUNTERPOISE_DATA: dataFolder };
  const child = spawn(process.execPath, [join(programFolder(), "electron/browser/serve.ts")], { env: environment });
  const address = new URL(await printedAddress(child));
  const host = chooseHost({
    location: address,
    history: { replaceState: () => undefined },
    storage: undefined,
    fetch: (path, init) => {
      const headers = { ...(init.headers as Record<string, string>), origin: address.origin };
      return fetch(new URL(path, address), { ...init, headers });
    },
  });
  return {
    pid: child.pid ?? 0,
    host,
    end: async () => {
      const ended = once(child, "exit");
      child.kill("SIGTERM");
      await ended;
    },
  };
}

function printedAddress(child: ChildProcess): Promise<string> {
  let text = "";
  child.stderr?.on("data", (piece: Buffer) => process.stderr.write(piece));
  return new Promise((resolve, reject) => {
    child.stdout?.on("data", (piece: Buffer) => {
      text += piece.toString("utf8");
      const address = /http:\S+(?=\n)/.exec(text)?.[0];
      if (address !== undefined) resolve(address);
    });
    child.once("exit", () => reject(new Error(`The application ended without printing its address: ${text}`)));
  });
}

import { subscribe, unsubscribe } from "node:diagnostics_channel";
import dns from "node:dns";
import { readdirSync, readFileSync } from "node:fs";
import { request } from "node:http";
import type { Socket } from "node:net";
import { join } from "node:path";
import { afterEach, describe, expect, test, vi } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import { encodeMessage } from "../../electron/boundary/host-codec.ts";
import { startLoopbackServer } from "../../electron/browser/loopback-server.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { programFolder } from "../../electron/program/program-folders.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { secretFor } from "./browser/secret-for.ts";
import { runInProcess } from "./command/run-in-process.ts";
import { describedSession, temporaryFolder } from "./simulated-recordings.ts";

afterEach(() => vi.restoreAllMocks());

/** Runs work and tells every place a socket of this process was opened to, and every name that was looked up. */
async function connectionsDuring(work: () => Promise<void>): Promise<{ places: string[]; names: string[] }> {
  const places: string[] = [];
  const names: string[] = [];
  const onSocket = (message: unknown) => {
    const { socket } = message as { readonly socket: Socket };
    socket.on("connect", () => places.push(`${socket.remoteAddress}:${socket.remotePort}`));
    socket.on("lookup", (_error, _address, _family, host: string) => names.push(host));
  };
  const lookup = vi.spyOn(dns, "lookup");
  subscribe("net.client.socket", onSocket);
  try {
    await work();
  } finally {
    unsubscribe("net.client.socket", onSocket);
  }
  return { places, names: [...names, ...lookup.mock.calls.map(([name]) => name)] };
}

describe("the host talks to nobody", () => {
  test("a whole session in the browser opens no connection but the page's own to the loopback address", async () => {
    const folder = temporaryFolder();
    folder.write(describedSession());
    const mistakes: unknown[] = [];
    const server = await startLoopbackServer({
      handlers: makeHandlers(new WorkspaceState(defaultSettings, folder.path), "browser"),
      rendererFolder: folder.path,
      report: (error) => mistakes.push(error),
    });
    let secret = "";
    const post = (name: string, payload: unknown) =>
      new Promise<number>((resolve, reject) => {
        const headers = { origin: `http://127.0.0.1:${server.port}`, "x-counterpoise-secret": secret };
        const sent = request(
          { host: "127.0.0.1", port: server.port, method: "POST", path: `/api/${name}`, headers },
          (response) => response.resume().on("end", () => resolve(response.statusCode ?? 0)),
        );
        sent.on("error", reject);
        sent.end(encodeMessage(payload));
      });
    const place = { folder: "", file: "countermovement-both-1.csv", trial: 1 };
    const requests: readonly (readonly [string, unknown])[] = [
      ["workspace.openDemo", {}],
      ["trials.trace", place],
      ["trials.change", { ...place, change: { seen: true } }],
      ["sides.curves", { folder: "", test: "countermovementJump", legs: "both", alignedAt: "takeoff" }],
      ["sheet.read", { folder: "" }],
      ...["pdf", "html", "csv", "json", "session"].map((format) => ["files.make", { folder: "", format }] as const),
    ];
    const { places, names } = await connectionsDuring(async () => {
      secret = await secretFor(server);
      for (const [name, payload] of requests) expect(await post(name, payload), name).toBe(200);
    });
    await server.close();
    folder.remove();
    expect(mistakes).toEqual([]);
    expect(new Set(places)).toEqual(new Set([`127.0.0.1:${server.port}`]));
    expect(names.filter((name) => name !== "127.0.0.1")).toEqual([]);
  });

  test("the command line opens no connection and looks up no name, sheets included", async () => {
    const folder = temporaryFolder();
    folder.write(describedSession(), "month-7");
    const seen = await connectionsDuring(async () => {
      expect((await runInProcess("analyze", join(folder.path, "month-7"))).code).toBe(0);
      for (const name of ["sheet.pdf", "sheet.html"]) {
        const out = join(folder.path, name);
        expect((await runInProcess("sheet", join(folder.path, "month-7"), "--out", out)).code).toBe(0);
      }
    });
    folder.remove();
    expect(seen).toEqual({ places: [], names: [] });
  });

  test("the watcher of this test does see a connection", async () => {
    const server = await startLoopbackServer({
      handlers: makeHandlers(new WorkspaceState(defaultSettings, ""), "browser"),
      rendererFolder: "",
      report: () => {},
    });
    const { places } = await connectionsDuring(
      () =>
        new Promise((resolve, reject) => {
          const sent = request({ host: "127.0.0.1", port: server.port, agent: false }, (response) =>
            response.resume().on("end", resolve),
          );
          sent.on("error", reject).end();
        }),
    );
    await server.close();
    expect(places).toEqual([`127.0.0.1:${server.port}`]);
  });

  test("no source of the host names a way out: only the loopback server knows of HTTP, and only to listen", () => {
    const waysOut =
      /\bfetch\(|\bWebSocket\b|\bXMLHttpRequest\b|node:(https|net|tls|dgram|dns|http2)|openExternal|autoUpdater|crashReporter/;
    const folder = join(programFolder(), "electron");
    const sources = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
    expect(sources.length).toBeGreaterThan(20);
    for (const name of sources) {
      const text = readFileSync(join(folder, name), "utf8");
      expect(waysOut.exec(text)?.[0], name).toBeUndefined();
      const imported = /import \{([^}]*)\} from "node:http"/.exec(text)?.[1];
      const values = imported?.split(",").filter((each) => !each.trim().startsWith("type "));
      if (values !== undefined) {
        expect([name.replaceAll("\\", "/"), values.map((each) => each.trim())]).toEqual([
          "browser/loopback-server.ts",
          ["createServer"],
        ]);
      }
    }
  });
});

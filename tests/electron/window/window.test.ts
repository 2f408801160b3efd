import { join } from "node:path";
import { beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import type { Host } from "../../../electron/boundary/host-api.ts";
import { channelOf, requestNames } from "../../../electron/boundary/request-names.ts";
import { programFolder } from "../../../electron/program/program-folders.ts";
import { contentSecurityPolicy } from "../../../electron/program/security-headers.ts";
import { menuTemplate } from "../../../electron/window/menu.ts";
import { bytesOf, jumpText, temporaryFolder } from "../simulated-recordings.ts";
import * as fake from "./electron-fake.ts";

const folder = temporaryFolder();
const screens = join(folder.path, "screens");

vi.mock("electron", () => import("./electron-fake.ts"));
vi.mock("../../../electron/program/program-folders.ts", async (original) => ({
  ...(await original<typeof import("../../../electron/program/program-folders.ts")>()),
  rendererFolder: () => screens,
  sampleTracesFolder: () => join(folder.path, "no-samples"),
}));

let host: Host;

beforeAll(async () => {
  folder.write(
    { "index.html": "<!doctype html><title>Counterpoise</title>", "assets/app.js": "export {};" },
    "screens",
  );
  folder.write({ "x.js": "outside" }, "outside");
  process.env.COUNTERPOISE_DATA = join(folder.path, "data");
  const { started } = await import("../../../electron/window/main.ts");
  await started;
  await import("../../../electron/window/preload.ts");
  host = fake.exposed.get("counterpoise") as Host;
  return () => folder.remove();
});

beforeEach(() => {
  fake.sender.frame = { url: "counterpoise://app/", parent: null };
});

const firstWindow = () => {
  const [window] = fake.windows;
  if (window === undefined) throw new Error("No window was opened.");
  return window;
};

describe("starting the window", () => {
  test("sandbox and scheme are settled before the program is ready, and the page comes last", () => {
    expect(fake.log).toEqual(["sandbox enabled", "schemes registered", "ready", "window opened", "page loaded"]);
    expect(firstWindow().address).toBe("counterpoise://app/");
    expect(firstWindow().options.show).toBe(false);
    firstWindow().emit("ready-to-show");
    expect(firstWindow().shown).toBe(true);
  });

  test("the page is sandboxed, isolated, without Node and without tools that reach further", () => {
    expect(firstWindow().options.webPreferences).toEqual({
      preload: join(programFolder(), "dist/electron/preload.cjs"),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: false,
    });
  });

  test("the scheme is an ordinary secure one that bypasses nothing", () => {
    expect(fake.registered.schemes).toEqual([
      { scheme: "counterpoise", privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  test("no name of the network is ever resolved and nothing is fetched in the background", () => {
    expect(fake.switches.get("host-resolver-rules")).toBe("MAP * ~NOTFOUND");
    for (const name of ["disable-background-networking", "disable-component-update", "disable-sync"]) {
      expect(fake.switches.has(name), name).toBe(true);
    }
  });

  test("a second start brings the window to the front", () => {
    fake.appEvents.emit("second-instance");
    expect(firstWindow().focused).toBe(1);
  });
});

describe("what the page gets", () => {
  test("one object with one function, and a channel for each request and no other", () => {
    expect([...fake.exposed.keys()]).toEqual(["counterpoise"]);
    expect(Object.keys(host)).toEqual(["call"]);
    expect(fake.channelNames().toSorted()).toEqual(requestNames.map(channelOf).toSorted());
  });

  test("requests reach the same handlers, and curves arrive as lists of doubles", async () => {
    expect(await host.call("application.describe", {})).toMatchObject({ host: "window" });
    await host.call("recordings.add", { path: "countermovement-both-1.csv", bytes: bytesOf(jumpText("both", 501)) });
    await host.call("recordings.answer", {
      folder: "",
      files: ["countermovement-both-1.csv"],
      answers: { test: "countermovementJump", limb: "both" },
    });
    const trace = await host.call("trials.trace", { folder: "", file: "countermovement-both-1.csv", trial: 1 });
    expect(trace.total).toBeInstanceOf(Float64Array);
    expect(trace.total.length).toBeGreaterThan(1000);
  });

  test("a folder is chosen in the system's own dialog, or left", async () => {
    expect(await host.call("watch.choose", {})).toEqual({});
    fake.chosen.folder = folder.path;
    expect(await host.call("watch.choose", {})).toEqual({ folder: folder.path });
  });

  test("a refusal arrives as its sentence", async () => {
    await expect(host.call("workspace.show", { folder: "gone" })).rejects.toThrow("That session is not open any more.");
  });

  test("a payload of the wrong shape is refused before a handler sees it", async () => {
    const untyped = host as unknown as { call(name: string, request: unknown): Promise<unknown> };
    await expect(untyped.call("workspace.show", { folder: 5 })).rejects.toThrow(/^folder: /);
    await expect(untyped.call("workspace.read", { extra: true })).rejects.toThrow();
  });

  test("names beyond the boundary are refused in the preload", async () => {
    const untyped = host as unknown as { call(name: string, request: unknown): Promise<unknown> };
    for (const name of ["constructor", "__proto__", "shell.openExternal", ""]) {
      await expect(untyped.call(name, {}), name).rejects.toThrow("There is no such request.");
    }
  });

  test("a message from a foreign, framed or vanished page is refused", async () => {
    const foreign = [
      { url: "https://evil.example/", parent: null },
      { url: "counterpoise://app.evil.example/", parent: null },
      { url: "counterpoise://other/", parent: null },
      { url: "file:///etc/passwd", parent: null },
      { url: "about:blank", parent: null },
      { url: "counterpoise://app/", parent: {} as Electron.WebFrameMain },
      null,
    ];
    for (const frame of foreign) {
      fake.sender.frame = frame;
      await expect(host.call("workspace.read", {}), frame?.url).rejects.toThrow("does not come from a page");
    }
  });
});

describe("what no page can do", () => {
  const prevented = (contents: fake.FakeContents, event: string, url: string): boolean => {
    let stopped = false;
    contents.emit(event, { url, preventDefault: () => (stopped = true) });
    return stopped;
  };

  test("open a window, leave for another address, follow a redirect or attach a web view", () => {
    const contents = new fake.FakeContents();
    fake.appEvents.emit("web-contents-created", {}, contents);
    for (const each of [contents, firstWindow().webContents]) {
      const asked = { url: "https://evil.example/" } as Electron.HandlerDetails;
      expect(each.openHandler?.(asked)).toEqual({ action: "deny" });
      for (const event of ["will-navigate", "will-frame-navigate", "will-redirect", "will-attach-webview"]) {
        expect(prevented(each, event, "https://evil.example/"), event).toBe(true);
      }
      expect(prevented(each, "will-navigate", "counterpoise://app.evil.example/")).toBe(true);
      expect(prevented(each, "will-navigate", "counterpoise://app/")).toBe(false);
    }
  });

  test("use a camera, a position, a device or a notification", () => {
    const granted: boolean[] = [];
    const contents = {} as Electron.WebContents;
    const details = {} as Electron.PermissionRequest;
    for (const permission of ["media", "geolocation", "notifications", "clipboard-read", "openExternal"] as const) {
      fake.sessionRules.permissionRequest?.(contents, permission, (answer) => granted.push(answer), details);
    }
    expect(granted).toEqual(Array(5).fill(false));
    expect([fake.sessionRules.permissionCheck?.(), fake.sessionRules.device?.()]).toEqual([false, false]);
    expect(fake.sessionRules.spellChecker).toBe(false);
  });

  test("load anything that is not the program's own", () => {
    const cancelled = (url: string) => {
      let answer: boolean | undefined;
      fake.sessionRules.beforeRequest?.({ url }, (response) => {
        answer = response.cancel;
      });
      return answer;
    };
    const foreign = [
      "https://example.org/x.js",
      "http://127.0.0.1:8080/",
      "ws://example.org/",
      "file:///etc/passwd",
      "ftp://example.org/",
      "counterpoise://other/x.js",
      "counterpoise://app.evil.example/",
      "blob:https://evil.example/1",
      "devtools://devtools/x",
    ];
    for (const url of foreign) expect(cancelled(url), url).toBe(true);
    for (const url of ["counterpoise://app/", "counterpoise://app/a.js", "blob:counterpoise://app/1", "data:,"]) {
      expect(cancelled(url), url).toBe(false);
    }
  });

  test("download a file it did not make itself", () => {
    const stopped = (url: string) => {
      let prevent = false;
      fake.sessionRules.events.emit("will-download", { preventDefault: () => (prevent = true) }, { getURL: () => url });
      return prevent;
    };
    expect(stopped("https://evil.example/x.exe")).toBe(true);
    expect(stopped("counterpoise://app/index.html")).toBe(true);
    expect(stopped("blob:counterpoise://app/1")).toBe(false);
  });
});

describe("the program's own pages", () => {
  const get = async (url: string, method = "GET") => {
    const answer = await fake.registered.protocol?.answer(new Request(url, { method }));
    if (answer === undefined) throw new Error("No protocol was registered.");
    return answer;
  };

  test("are served with their kinds and under the content policy", async () => {
    const page = await get("counterpoise://app/");
    expect([page.status, page.headers.get("content-type")]).toEqual([200, "text/html; charset=utf-8"]);
    expect(page.headers.get("content-security-policy")).toBe(contentSecurityPolicy);
    expect(await page.text()).toContain("Counterpoise");
    expect((await get("counterpoise://app/assets/app.js")).headers.get("content-type")).toMatch(/^text\/javascript/);
  });

  test("end at the folder of the screens", async () => {
    const paths = ["/../outside/x.js", "/..%2foutside/x.js", "/none.js", "/assets"];
    for (const path of paths) expect((await get(`counterpoise://app${path}`)).status, path).toBe(404);
    expect((await get("counterpoise://other/index.html")).status).toBe(404);
    expect((await get("counterpoise://app/", "POST")).status).toBe(404);
  });
});

describe("the menu", () => {
  test("prints by a key and quits by a key", () => {
    const items = fake.registered.menu.flatMap((menu) => (Array.isArray(menu.submenu) ? menu.submenu : []));
    const print = items.find((item) => item.accelerator === "CmdOrCtrl+P");
    print?.click?.({} as Electron.MenuItem, undefined, {} as Electron.KeyboardEvent);
    expect(firstWindow().webContents.printed).toBe(1);
  });

  test("has the places of each platform, and no tool for developers", () => {
    for (const platform of ["linux", "win32", "darwin"] as const) {
      const text = JSON.stringify(menuTemplate(platform, () => {}));
      expect(text).not.toMatch(/devtools|reload/i);
      for (const role of ["copy", "paste", "zoomIn", "togglefullscreen"]) expect(text).toContain(role);
      expect(text).toContain(platform === "darwin" ? "appMenu" : '"quit"');
    }
  });
});

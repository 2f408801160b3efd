import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { projectRoot } from "../architecture/imports.ts";
import { findChromium } from "./unpack-chromium.ts";

/** The served application in a real browser. */
export interface LaunchedApplication {
  /** What the program's addresses begin with. */
  readonly origin: string;
  /** The user's data of this launch; gone after closing. */
  readonly dataFolder: string;
  readonly browser: Browser;
  /** A page of its own with the application open; `problems` collects what its console complains of. */
  open(options?: OpenOptions): Promise<OpenPage>;
  close(): Promise<void>;
}

export interface LaunchOptions {
  /** For the program's Node, before its script. */
  readonly nodeArguments?: readonly string[];
  readonly environment?: Readonly<Record<string, string>>;
}

export interface OpenOptions {
  /** Another way in than a new address of the program. */
  readonly address?: string;
  readonly width?: number;
  readonly height?: number;
  readonly colourScheme?: "light" | "dark";
}

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly problems: readonly string[];
  /** Every address the page asked for. */
  readonly requests: readonly string[];
}

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Starts the built program as `npm start` does where there is no Electron, and a browser beside it. */
export async function launchApplication(options: LaunchOptions = {}): Promise<LaunchedApplication> {
  const { nodeArguments = [], environment: added = {} } = options;
  const dataFolder = mkdtempSync(join(tmpdir(), "counterpoise-data-"));
  for (const { name, bytes } of keptOriginals) writeFileSync(join(dataFolder, name), bytes);
  const server = spawn(process.execPath, [...nodeArguments, join(projectRoot, "dist/electron/serve.js")], {
    env: { ...process.env, COUNTERPOISE_NO_BROWSER: "1", ...added, COUNTERPOISE_DATA: dataFolder },
    stdio: ["pipe", "pipe", "inherit"],
  });
  const first = await readAddress(server);
  const nextAddress = addressesOf(server);
  const { executable, environment } = findChromium();
  const browser = await chromium.launch({
    executablePath: executable,
    args: flags,
    env: { ...process.env, ...environment } as Record<string, string>,
  });
  return {
    origin: new URL(first).origin,
    dataFolder,
    browser,
    open: async ({ address, ...options } = {}) => openPage(browser, address ?? (await nextAddress()), options),
    close: async () => {
      await browser.close();
      const ended = new Promise((resolve) => server.once("exit", resolve));
      server.kill();
      await ended;
      keepOriginals(dataFolder);
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

/** What the demo's register is copied from, as the first launch of this process made it: later ones need not make it again. */
let keptOriginals: readonly { readonly name: string; readonly bytes: Uint8Array }[] = [];

function keepOriginals(dataFolder: string): void {
  if (keptOriginals.length > 0) return;
  keptOriginals = readdirSync(dataFolder)
    .filter((name) => /^demo-original-[0-9a-f]+\.sqlite$/.test(name))
    .map((name) => ({ name, bytes: readFileSync(join(dataFolder, name)) }));
}

/** A step takes a second or two; a machine that is busy with something else needs longer, and only what hangs takes this. */
const stepMilliseconds = 90_000;

async function openPage(browser: Browser, address: string, options: OpenOptions): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    colorScheme: options.colourScheme ?? "light",
    reducedMotion: "reduce",
    acceptDownloads: true,
  });
  context.setDefaultTimeout(stepMilliseconds);
  const page = await context.newPage();
  const problems: string[] = [];
  const requests: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") problems.push(message.text());
  });
  page.on("pageerror", (error) => problems.push(error.message));
  page.on("request", (request) => requests.push(request.url()));
  await page.goto(address);
  return { page, context, problems, requests };
}

/** An address opens one tab: as a person would, Enter asks for another, one at a time. */
function addressesOf(server: ChildProcess): () => Promise<string> {
  let last: Promise<unknown> = Promise.resolve();
  return () => {
    const next = last.then(() => {
      const address = readAddress(server);
      server.stdin?.write("\n");
      return address;
    });
    last = next.catch(() => undefined);
    return next;
  };
}

function readAddress(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    const end = (code: number | null) =>
      reject(new Error(`The server ended with code ${code} before it gave an address.`));
    const take = (chunk: Buffer) => {
      text += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/#\S+(?=\s)/.exec(text);
      if (found === null) return;
      server.off("exit", end);
      server.stdout?.off("data", take);
      resolve(found[0]);
    };
    server.stdout?.on("data", take);
    server.once("exit", end);
  });
}

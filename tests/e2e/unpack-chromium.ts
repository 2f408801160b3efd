import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync } from "node:zlib";

const modules = join(dirname(fileURLToPath(import.meta.url)), "../../node_modules");
const packed = join(modules, "@sparticuz/chromium/bin");
const unpacked = join(modules, ".chromium");

/** Where a Chromium may be, and what it needs around it. */
export interface ChromiumPlace {
  readonly executable: string;
  readonly environment: Readonly<Record<string, string>>;
}

/** Installed browsers, tried first; COUNTERPOISE_CHROMIUM names another. */
const installed = [
  process.env.COUNTERPOISE_CHROMIUM ?? "",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/microsoft-edge",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

/**
 * A Chromium for the end-to-end tests: an installed one, or on Linux the one that a package brings, unpacked once
 * together with the libraries and fonts that a bare machine lacks.
 * @throws Error where there is none: no browser is a red run, never a skipped one.
 */
export function findChromium(): ChromiumPlace {
  const found = installed.find((path) => path !== "" && existsSync(path));
  if (found !== undefined) return { executable: found, environment: {} };
  if (process.platform !== "linux" || process.arch !== "x64") {
    throw new Error("No browser is at hand: install Chrome, Edge or Chromium, or name one in COUNTERPOISE_CHROMIUM.");
  }
  if (!existsSync(unpacked)) unpack();
  return {
    executable: join(unpacked, "chromium"),
    environment: {
      LD_LIBRARY_PATH: join(unpacked, "al2023/lib"),
      FONTCONFIG_PATH: join(unpacked, "fonts/fonts"),
    },
  };
}

function unpack(): void {
  const partial = `${unpacked}-${process.pid}`;
  rmSync(partial, { recursive: true, force: true });
  mkdirSync(partial, { recursive: true });
  const executable = join(partial, "chromium");
  writeFileSync(executable, brotliDecompressSync(readFileSync(join(packed, "chromium.br"))));
  chmodSync(executable, 0o755);
  for (const [archive, folder] of [
    ["al2023.tar.br", "al2023"],
    ["fonts.tar.br", "fonts"],
    ["swiftshader.tar.br", "."],
  ] as const) {
    const target = join(partial, folder);
    mkdirSync(target, { recursive: true });
    const tar = spawnSync("tar", ["-x", "-C", target], {
      input: brotliDecompressSync(readFileSync(join(packed, archive))),
    });
    if (tar.status !== 0) throw new Error(`The browser's ${archive} could not be unpacked: ${tar.stderr}`);
  }
  try {
    renameSync(partial, unpacked);
  } catch (error) {
    // Another worker unpacked it in the meantime, whole as this one would be.
    rmSync(partial, { recursive: true, force: true });
    if (!existsSync(join(unpacked, "chromium"))) throw error;
  }
}

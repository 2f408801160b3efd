#!/usr/bin/env node
// Stands behind `npm start`, `npm test`, `npm run validate` and the `counterpoise` command. Plain JavaScript for Node 20.19, because it
// runs before anything is installed: it installs and builds when that is missing or stale (said on stderr, so that
// stdout carries results only) and then runs the built program with the Node 24 that the installation brought.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { openWindow } from "./open-window.js";
import { runTests, tryTests } from "./run-tests.js";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const [word, ...rest] = process.argv.slice(2);

if (word === "start") {
  prepare(["host", "renderer"]);
  process.exitCode = openWindow(root, runtime());
} else if (word === "test") {
  prepare(["host", "renderer"]);
  process.exitCode = await runTests(root, runtime(), rest);
} else if (word === "try") {
  // Only tests of the whole program need it built.
  prepare(rest.length === 0 || rest.some((filter) => /e2e|electron/.test(filter)) ? ["host", "renderer"] : []);
  process.exitCode = await tryTests(root, runtime(), rest);
} else if (word === "validate") {
  prepare([]);
  const child = spawnSync(runtime(), [join(root, "build/validate.ts")], { stdio: "inherit" });
  process.exitCode = child.status ?? 3;
} else {
  prepare(["host"]);
  const child = spawnSync(runtime(), [join(root, "dist/electron/command.js"), ...process.argv.slice(2)], {
    stdio: "inherit",
  });
  process.exitCode = child.status ?? 3;
}

/** Installs and builds what is missing or stale; one process at a time does it, the others wait. */
function prepare(parts) {
  const lock = join(root, ".counterpoise-preparing");
  takeLock(lock);
  try {
    installIfStale();
    for (const part of parts) buildIfStale(part);
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function takeLock(lock) {
  for (;;) {
    try {
      mkdirSync(lock);
      writeFileSync(join(lock, "process"), String(process.pid));
      return;
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
      if (isAbandoned(lock)) rmSync(lock, { recursive: true, force: true });
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    }
  }
}

function isAbandoned(lock) {
  try {
    const owner = Number(readFileSync(join(lock, "process"), "utf8"));
    process.kill(owner, 0);
    return false;
  } catch (error) {
    // The owner is gone (ESRCH), or died between making the folder and writing its number more than a minute ago.
    if (error.code === "ESRCH") return true;
    return error.code === "ENOENT" && existsSync(lock) && Date.now() - statSync(lock).mtimeMs > 60_000;
  }
}

function installIfStale() {
  const wanted = hashOf(["package-lock.json", "package.json"]);
  const stamp = join(root, "node_modules/.counterpoise-installed");
  if (readStamp(stamp) === wanted) return;
  // What a link leads to is shared with other working copies: not this one's to clear away.
  if (lstatSync(join(root, "node_modules"), { throwIfNoEntry: false })?.isSymbolicLink()) return;
  say("Installing what the program needs (about a minute, once) …");
  run(process.platform === "win32" ? "npm.cmd" : "npm", [
    "ci",
    "--include=dev",
    "--include=optional",
    "--loglevel=error",
  ]);
  writeFileSync(stamp, wanted);
}

function buildIfStale(part) {
  const folders = part === "host" ? ["core", "electron", "build"] : ["core", "electron", "renderer", "build"];
  const wanted = hashOf(["package-lock.json", ...folders.flatMap(filesBelow)]);
  const stamp = join(root, `dist/.built-${part}`);
  if (readStamp(stamp) === wanted) return;
  say(`Building the ${part === "host" ? "program" : "screens"} …`);
  const configurations = part === "host" ? ["host", "preload"] : ["renderer"];
  for (const name of configurations) {
    run(runtime(), [
      join(root, "node_modules/vite/bin/vite.js"),
      "build",
      "--config",
      join(root, `build/vite.${name}.config.ts`),
      "--logLevel",
      "warn",
    ]);
  }
  writeFileSync(stamp, wanted);
}

/** The Node 24 in node_modules, or this one where it is new enough (a Mac brings its own). */
function runtime() {
  const platform = process.platform === "win32" ? "win" : process.platform;
  const executable = process.platform === "win32" ? "node.exe" : "node";
  const bundled = join(root, "node_modules", `node-${platform}-${process.arch}`, "bin", executable);
  if (existsSync(bundled)) return bundled;
  if (Number(process.versions.node.split(".")[0]) >= 24) return process.execPath;
  say("Node 24 or newer is needed on this kind of computer; please install it and try again.");
  process.exit(3);
}

function run(command, parameters) {
  const child = spawnSync(command, parameters, {
    cwd: root,
    stdio: ["ignore", 2, 2],
    shell: command.endsWith(".cmd"),
  });
  if (child.status === 0) return;
  say(`"${command} ${parameters.join(" ")}" ended with ${child.error?.message ?? `code ${child.status}`}.`);
  process.exit(3);
}

function filesBelow(folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .sort();
}

function hashOf(files) {
  const hash = createHash("sha256").update(`${process.platform} ${process.arch}`);
  for (const file of files) hash.update(`\0${file}\0`).update(readFileSync(join(root, file)));
  return hash.digest("hex");
}

function readStamp(path) {
  return existsSync(path) ? readFileSync(path, "utf8") : "";
}

function say(sentence) {
  process.stderr.write(`${sentence}\n`);
}

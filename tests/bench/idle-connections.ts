// How the served application bears connections that say nothing: opens many from another process of this computer and
// then asks for the page, as a browser would. Needs a build: node tests/bench/idle-connections.ts [CONNECTIONS] [FILES]
// (1,500 connections; the program may hold 1,024 files open, a usual limit of a computer, unless FILES says otherwise).
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { request } from "node:http";
import { connect, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { projectRoot } from "../architecture/imports.ts";

const connections = Number(process.argv[2] ?? 1500);
const files = Number(process.argv[3] ?? 1024);
/** A browser's person has gone by then. */
const patienceMilliseconds = 10_000;

const dataFolder = mkdtempSync(join(tmpdir(), "counterpoise-idle-"));
const command = `ulimit -n ${files}; exec "$0" "$1"`;
const program = spawn("sh", ["-c", command, process.execPath, join(projectRoot, "dist/electron/serve.js")], {
  env: { ...process.env, COUNTERPOISE_NO_BROWSER: "1", COUNTERPOISE_DATA: dataFolder },
  stdio: ["pipe", "pipe", "inherit"],
});
const port = await portOf(program);
console.log(`one at a time, before: the page after ${await pageAfter()}`);
const sockets: Socket[] = [];
let connected = 0;
let closed = 0;
for (let each = 0; each < connections; each += 1) {
  const socket = connect({ host: "127.0.0.1", port });
  socket.on("connect", () => {
    connected += 1;
  });
  socket.on("error", () => {});
  socket.on("close", () => {
    closed += 1;
  });
  sockets.push(socket);
}
await wait(3000);
console.log(`${connections} idle connections: ${connected} were made, ${closed} are closed again after 3 s`);
console.log(`meanwhile: the page after ${await pageAfter()}`);
await wait(4000);
console.log(`${closed} are closed 4 s later; then the page after ${await pageAfter()}`);
for (const socket of sockets) socket.destroy();
program.kill();
rmSync(dataFolder, { recursive: true, force: true });

function portOf(from: ChildProcess): Promise<number> {
  return new Promise((resolve, reject) => {
    let text = "";
    from.stdout?.on("data", (chunk: Buffer) => {
      text += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:(\d+)\//.exec(text);
      if (found) resolve(Number(found[1]));
    });
    from.once("exit", (code) => reject(new Error(`The program ended with code ${code}.`)));
  });
}

function pageAfter(): Promise<string> {
  const begun = performance.now();
  return new Promise((resolve) => {
    const sent = request({ host: "127.0.0.1", port, agent: false, timeout: patienceMilliseconds }, (response) => {
      response.resume();
      response.on("end", () => resolve(`${(performance.now() - begun).toFixed(0)} ms (status ${response.statusCode})`));
    });
    sent.on("timeout", () => {
      resolve(`more than ${patienceMilliseconds / 1000} s: never`);
      sent.destroy();
    });
    sent.on("error", (error) => resolve(`an error: ${error.message}`));
    sent.end();
  });
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

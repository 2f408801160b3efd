import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { Agent, request } from "node:http";
import { connect, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type LoopbackServer, startLoopbackServer } from "../../../electron/browser/loopback-server.ts";
import { fakeHandlers } from "../fake-handlers.ts";
import { secretFor } from "./secret-for.ts";

const mostConnections = 20;
const folder = mkdtempSync(join(tmpdir(), "counterpoise-"));
writeFileSync(join(folder, "index.html"), "<!doctype html><title>Counterpoise</title>");
const open: Socket[] = [];
const servers: LoopbackServer[] = [];
let patient: LoopbackServer;
let strict: LoopbackServer;

beforeAll(async () => {
  const start = async (silentMilliseconds: number, answerMilliseconds: number) => {
    const limits = { mostConnections, silentMilliseconds, answerMilliseconds };
    const server = await startLoopbackServer({
      handlers: fakeHandlers().handlers,
      rendererFolder: folder,
      report: () => {},
      limits,
    });
    servers.push(server);
    return server;
  };
  // Silence that outlasts the test shows what the number of connections does alone, and the other way round.
  patient = await start(600_000, 600_000);
  strict = await start(100, 100);
});
afterEach(() => {
  for (const socket of open.splice(0)) socket.destroy();
});
afterAll(async () => {
  for (const server of servers) await server.close();
  rmSync(folder, { recursive: true });
});

/** A connection that has been made, and a promise that it was closed by the other end. */
async function connection(server: LoopbackServer, said = "") {
  const socket = connect({ host: "127.0.0.1", port: server.port });
  socket.on("error", () => {});
  open.push(socket);
  const closed = new Promise<void>((resolve) => socket.once("close", () => resolve()));
  await new Promise((resolve) => socket.once("connect", resolve));
  socket.write(said);
  return { socket, closed };
}

function ask(server: LoopbackServer, agent: Agent, secret: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const headers = { origin: `http://127.0.0.1:${server.port}`, "x-counterpoise-secret": secret };
    const path = "/api/workspace.read";
    const sent = request({ host: "127.0.0.1", port: server.port, method: "POST", path, headers, agent }, (response) => {
      response.resume().on("end", () => resolve(response.statusCode));
    });
    sent.on("error", reject);
    sent.end("{}");
  });
}

test("three times as many idle connections as there are places: the tab keeps its own, and a new one gets in", async () => {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const secret = await secretFor(patient);
  expect(await ask(patient, agent, secret)).toBe(200);
  const own = Object.values(agent.freeSockets).flat()[0];
  const idle = await Promise.all(Array.from({ length: 3 * mostConnections }, () => connection(patient)));
  let closed = 0;
  for (const each of idle) void each.closed.then(() => (closed += 1));
  // Those beyond the places are closed as later ones come.
  await Promise.all(idle.slice(0, mostConnections).map((each) => each.closed));
  expect(await ask(patient, agent, secret)).toBe(200);
  expect(Object.values(agent.freeSockets).flat()[0]).toBe(own);
  expect(await secretFor(patient)).toBe(secret);
  expect(closed).toBeGreaterThanOrEqual(2 * mostConnections);
  agent.destroy();
});

test("where every place belongs to a tab that has shown the secret, a stranger is turned away", async () => {
  const secret = await secretFor(patient);
  const agents = Array.from({ length: mostConnections }, () => new Agent({ keepAlive: true, maxSockets: 1 }));
  for (const agent of agents) expect(await ask(patient, agent, secret)).toBe(200);
  await (await connection(patient)).closed;
  for (const agent of agents) expect(await ask(patient, agent, secret)).toBe(200);
  for (const agent of agents) agent.destroy();
});

test("a connection without the secret is closed when it says nothing, half a request, or asks and falls silent", async () => {
  const host = `Host: 127.0.0.1:${strict.port}`;
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const secret = await secretFor(strict);
  expect(await ask(strict, agent, secret)).toBe(200);
  const own = Object.values(agent.freeSockets).flat()[0];
  const silent = await connection(strict);
  const half = await connection(strict, `GET / HTTP/1.1\r\n${host}\r\nX-Slow`);
  const asked = await connection(strict, `GET / HTTP/1.1\r\n${host}\r\n\r\n`);
  let answered = "";
  asked.socket.on("data", (piece: Buffer) => (answered += piece.toString()));
  await Promise.all([silent.closed, half.closed, asked.closed]);
  expect(answered).toContain("200 OK");
  expect(await ask(strict, agent, secret)).toBe(200);
  expect(Object.values(agent.freeSockets).flat()[0]).toBe(own);
  agent.destroy();
});

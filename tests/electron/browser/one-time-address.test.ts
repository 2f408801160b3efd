import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type LoopbackServer, startLoopbackServer } from "../../../electron/browser/loopback-server.ts";
import { OneTimeTokens } from "../../../electron/browser/one-time-tokens.ts";
import { writeRedirectFile } from "../../../electron/browser/redirect-file.ts";
import { fakeHandlers } from "../fake-handlers.ts";
import { exchange, tokenOf } from "./secret-for.ts";

let server: LoopbackServer;
const folder = mkdtempSync(`${tmpdir()}/counterpoise-`);
beforeAll(async () => {
  server = await startLoopbackServer({
    handlers: fakeHandlers().handlers,
    rendererFolder: folder,
    report: () => {},
  });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

describe("an address", () => {
  test("gives the secret once, to the own page alone, and is no secret itself", async () => {
    let used = 0;
    const address = server.newAddress(60_000, () => {
      used += 1;
    });
    const token = tokenOf(address);
    expect(new URL(address).origin).toBe(`http://127.0.0.1:${server.port}`);
    expect(Buffer.from(token, "base64url").byteLength).toBe(32);
    expect((await exchange(server, token, "https://evil.example")).status).toBe(403);
    expect((await exchange(server, `${token}x`)).status).toBe(403);
    expect((await exchange(server, "")).status).toBe(403);
    expect(used).toBe(0);
    const first = await exchange(server, token);
    expect([first.status, used]).toEqual([200, 1]);
    expect(first.body).not.toBe(token);
    const again = await exchange(server, token);
    expect([again.status, again.body.includes(first.body)]).toEqual([403, false]);
    const other = await exchange(server, tokenOf(server.newAddress(60_000)));
    expect(other.body).toBe(first.body);
  });

  test("is dead after its time, and the oldest are when very many wait", () => {
    let now = 0;
    const tokens = new OneTimeTokens(() => now);
    const late = tokens.issue(1000);
    now = 1001;
    expect(tokens.use(late)).toBe(false);
    const oldest = tokens.issue(1000);
    const others = Array.from({ length: 32 }, () => tokens.issue(1000));
    expect(tokens.use(oldest)).toBe(false);
    expect(others.every((token) => tokens.use(token))).toBe(true);
  });
});

test("the redirect file is its owner's alone, sends no referrer, loads nothing, and goes with its folder", () => {
  const address = "http://127.0.0.1:4321/#a-token";
  const before = process.umask(0);
  try {
    const file = writeRedirectFile(address);
    expect(statSync(file.path).mode & 0o777).toBe(0o600);
    expect(statSync(dirname(file.path)).mode & 0o777).toBe(0o700);
    const text = readFileSync(file.path, "utf8");
    expect(text).toContain(`<meta http-equiv="refresh" content="0; url=${address}">`);
    expect(text).toContain('<meta name="referrer" content="no-referrer">');
    expect(text).toContain("default-src 'none'");
    expect(text).not.toContain("<script");
    expect(file.path).not.toContain("a-token");
    file.remove();
    file.remove();
    expect(existsSync(dirname(file.path))).toBe(false);
  } finally {
    process.umask(before);
  }
});

import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { type OutgoingHttpHeaders, request } from "node:http";
import { connect } from "node:net";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { recordingByteLimit } from "../../../core/recording/size-limit.ts";
import { decodeMessage, encodeMessage } from "../../../electron/boundary/host-codec.ts";
import { combinedWithPad, padHeader } from "../../../electron/boundary/masked-passphrases.ts";
import { type LoopbackServer, startLoopbackServer } from "../../../electron/browser/loopback-server.ts";
import { contentSecurityPolicy } from "../../../electron/program/security-headers.ts";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { fakeHandlers } from "../fake-handlers.ts";
import { secretFor } from "./secret-for.ts";

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
  readonly bytes: Uint8Array;
}

let server: LoopbackServer;
let knownSecret: string;
let folder: string;
let outside: string;
const reported: unknown[] = [];
const fake = fakeHandlers();

beforeAll(async () => {
  outside = mkdtempSync(join(tmpdir(), "counterpoise-"));
  folder = join(outside, "renderer");
  mkdirSync(join(folder, "assets"), { recursive: true });
  writeFileSync(join(folder, "index.html"), "<!doctype html><title>Counterpoise</title>");
  writeFileSync(join(folder, "assets/index-a_B-1.js"), "export {};");
  writeFileSync(join(folder, "notes.txt"), "not a page");
  writeFileSync(join(outside, "secret.js"), "outside");
  symlinkSync(join(outside, "secret.js"), join(folder, "assets/link.js"));
  server = await startLoopbackServer({
    handlers: fake.handlers,
    rendererFolder: folder,
    report: (error) => reported.push(error),
  });
  knownSecret = await secretFor(server);
});

afterAll(async () => {
  await server.close();
  rmSync(outside, { recursive: true });
});

const secret = () => knownSecret;
const origin = () => `http://127.0.0.1:${server.port}`;
const goodHeaders = (): OutgoingHttpHeaders => ({ origin: origin(), "x-counterpoise-secret": secret() });

function ask(
  method: string,
  path: string,
  headers: OutgoingHttpHeaders = {},
  body: string | Uint8Array | undefined = undefined,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: "127.0.0.1", port: server.port, method, path, headers }, (response) => {
      const pieces: Buffer[] = [];
      response.on("data", (piece: Buffer) => pieces.push(piece));
      response.on("end", () => {
        const bytes = Buffer.concat(pieces);
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: bytes.toString("utf8"), bytes });
      });
    });
    sent.on("error", reject);
    sent.end(body);
  });
}

const post = (name: string, payload: unknown, headers: OutgoingHttpHeaders = goodHeaders()) =>
  ask("POST", `/api/${name}`, headers, encodeMessage(payload));

describe("a request of the own page", () => {
  test("is handled, and its reply carries numbers bit for bit", async () => {
    const answer = await post("trials.trace", { folder: "a", file: "b.csv", trial: 1 });
    expect(answer.status).toBe(200);
    expect(decodeMessage(answer.bytes)).toEqual(fake.trace);
  });

  test("with a payload of the wrong shape is refused before a handler sees it", async () => {
    const calls = fake.calls.length;
    const answer = await post("trials.trace", { folder: "a", file: "b.csv", trial: "1" });
    expect([answer.status, fake.calls.length]).toEqual([400, calls]);
    expect(answer.body).toMatch(/^trial: /);
    expect((await ask("POST", "/api/trials.trace", goodHeaders(), "{")).status).toBe(400);
  });

  test("that cannot be done is answered by the sentence of the host", async () => {
    fake.fail(new RequestRefused("That session is not open any more."));
    const answer = await post("workspace.show", { folder: "gone" });
    expect([answer.status, answer.body]).toEqual([409, "That session is not open any more."]);
  });

  test("that meets a mistake of ours is reported here and says nothing of the inside to the page", async () => {
    fake.fail(new TypeError("secret inner workings"));
    const answer = await post("workspace.show", { folder: "a" });
    expect(answer.status).toBe(500);
    expect(answer.body).not.toMatch(/secret/);
    expect(String(reported.at(-1))).toMatch(/secret inner workings/);
  });
});

describe("attacks on the loopback address", () => {
  const payload = {};

  test("no secret, a wrong one, part of one and the right one twice are refused alike", async () => {
    const { "x-counterpoise-secret": _none, ...without } = goodHeaders();
    expect((await post("workspace.read", payload, without)).status).toBe(403);
    for (const wrong of ["", "x", secret().slice(0, -1), `${secret()}x`, `${secret()}, ${secret()}`]) {
      const answer = await post("workspace.read", payload, { ...goodHeaders(), "x-counterpoise-secret": wrong });
      expect(answer.status, wrong).toBe(403);
    }
    const twice = await post("workspace.read", payload, {
      ...goodHeaders(),
      "x-counterpoise-secret": [secret(), secret()],
    });
    expect(twice.status).toBe(403);
  });

  test("a missing or foreign origin is refused, however near it looks", async () => {
    const { origin: _none, ...without } = goodHeaders();
    expect((await post("workspace.read", payload, without)).status).toBe(403);
    const near = [
      "https://evil.example",
      "null",
      `https://127.0.0.1:${server.port}`,
      `http://localhost:${server.port}`,
      `http://127.0.0.1:${server.port}.evil.example`,
      "http://127.0.0.1",
      `${origin()}/`,
    ];
    for (const foreign of near) {
      const answer = await post("workspace.read", payload, { ...goodHeaders(), origin: foreign });
      expect(answer.status, foreign).toBe(403);
    }
  });

  test("a foreign host is refused for requests and for pages, so a renamed address reaches nothing", async () => {
    for (const host of ["evil.example", `evil.example:${server.port}`, `localhost:${server.port}`, "127.0.0.1"]) {
      expect((await post("workspace.read", payload, { ...goodHeaders(), host })).status, host).toBe(421);
      expect((await ask("GET", "/", { host })).status, host).toBe(421);
    }
  });

  test("two hosts are refused, the right one first or last, and a missing one", async () => {
    const own = `Host: 127.0.0.1:${server.port}`;
    for (const hosts of [[own, own], [own, "Host: evil.example"], ["host: evil.example", own], []]) {
      expect((await rawGet("/", hosts)).status, hosts.join(", ")).toBeOneOf([400, 421]);
    }
    expect((await rawGet("/", [own])).status).toBe(200);
  });

  test("reading a request, or any other method, is refused", async () => {
    for (const method of ["GET", "PUT", "DELETE", "OPTIONS", "PATCH"]) {
      expect((await ask(method, "/api/workspace.read", goodHeaders())).status, method).toBe(405);
    }
    expect((await ask("POST", "/", goodHeaders())).status).toBe(405);
  });

  test("names every object carries are no requests", async () => {
    for (const name of ["constructor", "__proto__", "toString", "hasOwnProperty", "", "workspace.read/"]) {
      expect((await post(name, payload)).status, name).toBe(404);
    }
  });

  test("a body larger than any request is refused, announced or not", async () => {
    const calls = fake.calls.length;
    const announced = { ...goodHeaders(), "content-length": recordingByteLimit * 2 };
    const answer = await ask("POST", "/api/workspace.read", announced);
    expect([answer.status, answer.headers.connection]).toEqual([413, "close"]);
    // A sender that is still busy is heard to its end, so that it reads the answer and not a reset.
    expect(await streamed(recordingByteLimit * 1.5)).toBe(413);
    expect(fake.calls.length).toBe(calls);
  });

  test("paths that climb out of the screens find nothing, encoded or not", async () => {
    const paths = [
      "/../secret.js",
      "/assets/../../secret.js",
      "/%2e%2e/secret.js",
      "/..%2fsecret.js",
      "/assets/%2e%2e%2f%2e%2e%2fsecret.js",
      "/..\\secret.js",
      "/assets/link.js",
      "//secret.js",
      "/%00index.html",
      "/%",
      "/.hidden.js",
    ];
    for (const path of paths) expect((await rawGet(path)).status, path).toBe(404);
  });
});

describe("pages of the loopback address", () => {
  test("the screens are served with their kinds, other files are not", async () => {
    const page = await ask("GET", "/");
    expect([page.status, page.headers["content-type"]]).toEqual([200, "text/html; charset=utf-8"]);
    expect(page.body).toContain("Counterpoise");
    const script = await ask("GET", "/assets/index-a_B-1.js");
    expect([script.status, script.headers["content-type"]]).toEqual([200, "text/javascript; charset=utf-8"]);
    expect((await ask("GET", "/notes.txt")).status).toBe(404);
    expect((await ask("GET", "/assets")).status).toBe(404);
  });

  test("every answer carries the security headers, refusals included", async () => {
    const answers = [
      await ask("GET", "/"),
      await ask("GET", "/none.js"),
      await ask("GET", "/", { host: "evil.example" }),
      await post("workspace.read", {}, {}),
      await post("workspace.read", {}),
    ];
    for (const { headers } of answers) {
      expect(headers).toMatchObject({
        "content-security-policy": contentSecurityPolicy,
        "x-content-type-options": "nosniff",
        "cross-origin-opener-policy": "same-origin",
        "cross-origin-resource-policy": "same-origin",
        "cache-control": "no-store",
        "referrer-policy": "no-referrer",
      });
      expect(headers["access-control-allow-origin"]).toBeUndefined();
    }
  });

  test("the policy allows own files only: no script from elsewhere, none inline, no connection but the own", () => {
    expect(contentSecurityPolicy).toBe(
      "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; " +
        "font-src 'self'; connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'",
    );
  });
});

describe("the loopback address itself", () => {
  test("the secret has 256 random bits and is another at every launch", async () => {
    const other = await startLoopbackServer({ handlers: fake.handlers, rendererFolder: folder, report: () => {} });
    const otherSecret = await secretFor(other);
    await other.close();
    expect(Buffer.from(secret(), "base64url").byteLength).toBe(32);
    expect(otherSecret).not.toBe(secret());
  });

  test("no other address of this computer answers", async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .filter((address) => !address.internal && address.family === "IPv4")
      .map((address) => address.address);
    for (const address of [...others, "127.0.0.2"]) {
      const reached = await new Promise((resolve) => {
        const socket = connect({ host: address, port: server.port });
        socket.on("connect", () => {
          socket.destroy();
          resolve(true);
        });
        socket.on("error", () => resolve(false));
      });
      expect(reached, address).toBe(false);
    }
  });
});

/** Sends a path to the letter; the usual clients would tidy it first. */
function rawGet(
  path: string,
  hosts: readonly string[] = [`Host: 127.0.0.1:${server.port}`],
): Promise<{ readonly status: number }> {
  return new Promise((resolve, reject) => {
    const socket = connect({ host: "127.0.0.1", port: server.port });
    let text = "";
    socket.setEncoding("utf8");
    socket.on("data", (piece: string) => {
      text += piece;
    });
    socket.on("error", reject);
    socket.on("close", () => resolve({ status: Number(text.split(" ")[1]) }));
    socket.write(`${[`GET ${path} HTTP/1.1`, ...hosts, "Connection: close"].join("\r\n")}\r\n\r\n`);
  });
}

/** Sends a body of unannounced length; resolves to the status or to how the sending ended. */
function streamed(bytes: number): Promise<number | string | undefined> {
  return new Promise((resolve) => {
    const sent = request(
      { host: "127.0.0.1", port: server.port, method: "POST", path: "/api/workspace.read", headers: goodHeaders() },
      (response) => {
        resolve(response.statusCode);
        sent.destroy();
      },
    );
    sent.on("error", (error: NodeJS.ErrnoException) => resolve(error.code));
    const piece = Buffer.alloc(1024 * 1024, "x");
    let left = bytes;
    const more = () => {
      while (left > 0) {
        left -= piece.byteLength;
        if (!sent.write(piece)) {
          sent.once("drain", more);
          return;
        }
      }
      sent.end();
    };
    more();
  });
}

describe("a passphrase", () => {
  test("comes masked by a pad that is good once, and without one is refused", async () => {
    const request = { passphrase: new TextEncoder().encode("nine grey geese") };
    const calls = fake.calls.length;
    expect((await post("register.unlock", request)).status).toBe(400);
    expect((await ask("POST", "/pad", { origin: origin() })).status).toBe(403);
    const given = await ask("POST", "/pad", goodHeaders());
    const masked = combinedWithPad(request, given.bytes);
    expect(encodeMessage(masked)).not.toEqual(encodeMessage(request));
    const headers = { ...goodHeaders(), [padHeader]: String(given.headers[padHeader]) };
    expect(fake.calls.length).toBe(calls);
    expect(combinedWithPad(masked, given.bytes)).toEqual(request);
    // It reaches the handler, which refuses it: this host keeps no register.
    expect((await post("register.unlock", masked, headers)).status).toBe(409);
    expect((await post("register.unlock", masked, headers)).status).toBe(400);
  });
});

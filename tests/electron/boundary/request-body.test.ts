import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { encodeMessage } from "../../../electron/boundary/host-codec.ts";
import { readRequestBody } from "../../../electron/boundary/request-body.ts";
import { BeyondLimits, readJson } from "../../../electron/bounded-json/read-json.ts";
import { readUpTo } from "../../../electron/bounded-json/read-up-to.ts";

const read = (text: string) => readRequestBody(Buffer.from(text));

describe("the body of a request", () => {
  test("brings recordings unchanged, whatever their bytes look like", () => {
    const request = {
      path: 'jump [1], "two".csv',
      bytes: new Uint8Array(2_000_000).fill(0x5b),
      more: [Uint8Array.of(0)],
    };
    const arrived = readRequestBody(encodeMessage(request)) as typeof request;
    expect(Buffer.compare(arrived.bytes, request.bytes)).toBe(0);
    expect(arrived).toMatchObject({ path: request.path, more: request.more });
  });

  const long = "x".repeat(1_100_000);
  test.each([
    ["a text of a megabyte and more", JSON.stringify({ note: long }), "bytes in one text"],
    ["such a text as a name", JSON.stringify({ [long]: 1 }), "bytes in one text"],
    ["more text than any request", `[${" ".repeat(17_000_000)}]`, "is larger than 16 MB"],
    ["lists within each other", "[".repeat(5_000_000), "within each other"],
    ["very many values", `[${"0,".repeat(300_000)}0]`, "values"],
  ])("with %s is refused before it is parsed", (_what, text, why) => {
    expect(() => read(text)).toThrow(BeyondLimits);
    expect(() => read(text)).toThrow(why);
  });

  test("gives each of the bytes behind it out once, so that a small message cannot fill the memory", () => {
    const twice = (each: string) => `[${each},${each}]\u0000abcdefgh`;
    expect(read('[{"$bytes":[0,2]},{"$bytes":[2,2]}]\u0000abcd')).toEqual(
      [Buffer.from("ab"), Buffer.from("cd")].map((each) => new Uint8Array(each)),
    );
    for (const mark of ["$bytes", "$float64"]) {
      expect(() => read(twice(`{"${mark}":[0,8]}`)), mark).toThrow("wanted twice");
    }
  });
});

test("keys of the language itself stay content", () => {
  const limits = { bytes: 1000, depth: 4, elements: 20, textBytes: 100 };
  const value = readJson(Buffer.from('{"__proto__":{"admin":true},"a":1,"a":2}'), limits) as Record<string, unknown>;
  expect([value.a, Object.keys(value), "admin" in value, "admin" in {}]).toEqual([2, ["__proto__", "a"], false, false]);
});

test("of a file beyond its limit one byte more is read than it allows", () => {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-limit-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, "a.json");
  writeFileSync(path, Buffer.alloc(1_000_000, "["));
  expect(readUpTo(path, 300_000)).toHaveLength(300_001);
  expect(readUpTo(path, 1_000_000)).toHaveLength(1_000_000);
  expect(readUpTo(path, 2_000_000)).toHaveLength(1_000_000);
});

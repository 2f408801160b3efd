import { describe, expect, test } from "vitest";
import { beyondJsonLimits, type JsonLimits } from "../../../core/bytes/json-bounds.ts";
import { parseLayout } from "../../../core/stated/layout-file.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";
import { told } from "../../told.ts";

const encode = (text: string): Uint8Array => Buffer.from(text);
const limits: JsonLimits = { bytes: 1000, depth: 3, elements: 8, textBytes: 12 };

describe("a document is measured by its bytes alone", () => {
  test.each<readonly [string, string, keyof JsonLimits | undefined]>([
    ["within all limits", '{"a":[1,{"b":2}]}', undefined],
    ["as deep as allowed", "[[[1]]]", undefined],
    ["one level deeper", "[[[[1]]]]", "depth"],
    ["many short ones beside each other", "[[],[],[]]", undefined],
    ["one value more than allowed", "[1,2,3,4,5,6,7,8]", "elements"],
    ["as many values as allowed", "[1,2,3,4,5,6,7]", undefined],
    ["brackets and commas inside a text are text", '"[[[[,,,,,,,"', undefined],
    ["an escaped quotation mark does not end a text", String.raw`"\"[[[[[["`, undefined],
    ["an escaped backslash does not hide the end", String.raw`["\\",[[[1]]]]`, "depth"],
    ["a text longer than allowed", `"${"x".repeat(13)}"`, "textBytes"],
    ["a text as long as allowed", `"${"x".repeat(12)}"`, undefined],
    ["a text that never ends", `"${"x".repeat(13)}`, "textBytes"],
    ["larger than allowed", " ".repeat(1001), "bytes"],
    ["closing brackets without opening ones", "]]]]", undefined],
  ])("%s", (_what, text, expected) => {
    expect(beyondJsonLimits(encode(text), limits)).toBe(expected);
  });
});

describe("documents that were made to fill the memory", () => {
  test.each([
    ["20 MB of opening brackets", Buffer.alloc(20_000_000, "["), "is larger than 8 MB"],
    [
      "8 MB of opening brackets",
      Buffer.alloc(8_000_000, "["),
      "holds more than 32 lists and objects within each other",
    ],
    ["8 MB of empty objects", encode(`[${"{},".repeat(2_600_000)}{}]`), "holds more than 200,000 values"],
    ["one text of 4 MB", encode(`{"note":"${"x".repeat(4_000_000)}"}`), "holds more than 1,048,576 bytes in one text"],
  ])("%s as session.json is one finding", (_what, bytes, why) => {
    const { description, findings } = parseSessionFile(bytes);
    expect(description).toEqual({});
    expect(findings.map((each) => told(each)).map(({ message }) => message)).toEqual([
      `session.json was not read: it ${why}.`,
    ]);
  });

  test("as a saved layout is one finding", () => {
    const said = (bytes: Uint8Array) =>
      parseLayout(bytes)
        .findings.map((each) => told(each))
        .map(({ message }) => message);
    expect(said(Buffer.alloc(20_000_000, "["))).toEqual(["The saved layout was not read: it is larger than 1 MB."]);
    expect(said(encode(`[${"1,".repeat(60_000)}1]`))).toEqual([
      "The saved layout was not read: it holds more than 50,000 values.",
    ]);
  });

  test("thousands of entries that are not understood are counted, not listed one by one", () => {
    const { findings } = parseSessionFile(encode(`{"files":[${"{},".repeat(49_999)}{}]}`));
    expect(findings).toHaveLength(201);
    expect(told(findings.at(-1))?.message).toBe("session.json is not understood at 49800 more places.");
  });
});

test("a session of 5,000 recordings is within the limits", () => {
  const file = (index: number) => ({
    file: `a long name of a recording, number ${index}.csv`,
    trial: 1,
    test: "countermovementJump",
    limb: "both",
    seen: true,
  });
  const bytes = encode(JSON.stringify({ files: Array.from({ length: 5000 }, (_, index) => file(index)) }, null, 2));
  const { description, findings } = parseSessionFile(bytes);
  expect([description.files?.length, findings]).toEqual([5000, []]);
});

test("a key twice counts as it stands last, and keys of the language itself change nothing beside the document", () => {
  const { description, findings } = parseSessionFile(
    encode('{"note":"first","note":"last","__proto__":{"massKg":50},"constructor":{"prototype":{"massKg":50}}}'),
  );
  expect(description).toEqual({ note: "last" });
  expect(findings.map((each) => told(each)).map(({ message }) => message)).toEqual([
    'session.json has an entry called "__proto__", which means nothing here.',
    'session.json has an entry called "constructor", which means nothing here.',
  ]);
  expect("massKg" in {}).toBe(false);
});

import { Buffer } from "node:buffer";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { parseSessionFile, writeSessionFile } from "../../../core/stated/session-file.ts";
import { told } from "../../told.ts";

const utf8 = (text: string) => new Uint8Array(Buffer.from(text, "utf8"));
const parse = (document: unknown) => parseSessionFile(utf8(JSON.stringify(document)));

const full: SessionDescription = {
  athlete: {
    code: "MT-01",
    name: "Maren Tveitlund",
    sex: "female",
    birthYear: 2003,
    sport: "handball",
    level: "national league",
  },
  involved: "right",
  injury: "right knee, anterior cruciate ligament reconstruction, hamstring graft",
  date: "2026-10-12",
  milestone: "month 7",
  massKg: 68.6,
  gravity: 9.82,
  dropHeightMetres: 0.3,
  leadingLeg: "left",
  plates: [
    { column: "Fz left", foot: "left" },
    { column: "Fz right", foot: "right" },
  ],
  pain: 1,
  effusion: "none",
  stopped: { reason: "fire drill" },
  cautions: { answeredBy: "the treating physiotherapist", date: "2026-10-12", note: "all answered no" },
  simulated: true,
  note: "Knie schmerzfrei – gut geschlafen",
  references: [
    {
      test: "countermovementJump",
      legs: "single",
      measure: "jumpHeightImpulse",
      side: "left",
      value: 0.156,
      unit: "m",
      date: "2025-08-20",
      origin: "pre-injury",
    },
  ],
  files: [
    {
      file: "two legs/jump 1.csv",
      trial: 2,
      test: "countermovementJump",
      limb: "both",
      rateHz: 1000,
      unit: "kN",
      columns: { time: 1, left: "Fz left", right: 3 },
      excluded: { reason: "stumbled" },
      seen: true,
      events: [{ name: "takeoff", contactIndex: 1, time: 2.3456 }],
      plates: [{ column: "Fz left", foot: "right" }],
    },
  ],
};

describe("session.json", () => {
  it("reads back to the same description, every entry there is", () => {
    const text = writeSessionFile(full);
    expect(text.endsWith("}\n")).toBe(true);
    expect(parseSessionFile(utf8(text))).toEqual({ description: full, findings: [] });
  });

  it("is written in one order, however the description was put together", () => {
    const turned = Object.fromEntries(Object.entries(full).reverse()) as SessionDescription;
    expect(writeSessionFile(turned)).toBe(writeSessionFile(full));
    expect(writeSessionFile({ pain: 2, involved: "left" })).toBe('{\n  "involved": "left",\n  "pain": 2\n}\n');
  });

  it("reads back whatever was written, for any description", () => {
    const side = fc.constantFrom("left" as const, "right" as const);
    const text = fc.string({ minLength: 1 });
    const entry = fc.record(
      {
        file: fc.constantFrom("a.csv", "folder/b.txt", "übung 3.csv"),
        trial: fc.integer({ min: 1, max: 9 }),
        limb: fc.constantFrom("left" as const, "right" as const, "both" as const),
        rateHz: fc.double({ min: 1, max: 5000, noNaN: true }),
        excluded: fc.record({ reason: text }),
        practice: fc.boolean(),
        seen: fc.boolean(),
        events: fc.array(
          fc.record({
            name: fc.constantFrom("onset" as const, "takeoff" as const),
            time: fc.double({ min: 0, max: 60, noNaN: true }),
          }),
        ),
      },
      { requiredKeys: ["file"] },
    );
    const description: fc.Arbitrary<SessionDescription> = fc.record(
      {
        athlete: fc.record({ code: text }),
        involved: fc.constantFrom("left" as const, "right" as const, "both" as const, "none" as const),
        massKg: fc.double({ min: 25, max: 200, noNaN: true }),
        plates: fc.array(fc.record({ column: text, foot: side })),
        pain: fc.integer({ min: 0, max: 10 }),
        effusion: fc.constantFrom("none" as const, "trace" as const, "1+" as const),
        stopped: fc.record({ reason: text }),
        files: fc.array(entry),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(description, (made) => {
        // JSON knows no negative zero.
        const read = parseSessionFile(utf8(writeSessionFile(made)));
        expect(read.findings).toEqual([]);
        expect(read.description).toEqual(JSON.parse(JSON.stringify(made)));
      }),
    );
  });

  it("may carry a byte order mark or be UTF-16, as text editors write it", () => {
    const text = '{"note":"Müller"}';
    const marked = utf8(`\ufeff${text}`);
    const wide = new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
    expect(parseSessionFile(marked)).toEqual({ description: { note: "Müller" }, findings: [] });
    expect(parseSessionFile(wide)).toEqual({ description: { note: "Müller" }, findings: [] });
  });

  it("that is not UTF-8 is read with a warning instead of being lost", () => {
    const read = parseSessionFile(new Uint8Array(Buffer.from('{"note":"Müller"}', "latin1")));
    expect(read.description).toEqual({ note: "Müller" });
    expect(read.findings.map((each) => each.code)).toEqual(["encoding-guessed"]);
  });
});

describe("what cannot be read of session.json", () => {
  it("costs only the file entry it stands in, and is named with its place", () => {
    const { description, findings } = parse({
      involved: "right",
      files: [{ file: "a.csv" }, { file: "b.csv", rateHz: "fast" }, { file: "c.csv", limb: "left" }],
    });
    expect(description).toEqual({ involved: "right", files: [{ file: "a.csv" }, { file: "c.csv", limb: "left" }] });
    expect(findings).toHaveLength(1);
    expect(told(findings[0])).toMatchObject({
      code: "session-unreadable",
      severity: "warning",
      where: "files[1].rateHz",
      message: 'session.json is not understood at files[1].rateHz: a number is expected, found "fast".',
    });
  });

  it("costs no exclusion: a trial that somebody excluded does not count because the entry is misspelt", () => {
    const { description, findings } = parse({
      files: [
        { file: "a.csv", excluded: "stumbled" },
        { file: "b.csv", exclude: true },
        { file: "c.csv", trial: 2, rateHz: "fast", excluded: { reason: "hand on the rail" } },
        { file: "d.csv", excluded: false },
        { file: "e.csv", excluded: { because: "tired" } },
        { excluded: "no file" },
      ],
    });
    const unread = { reason: "session.json excludes it in words that cannot be read" };
    expect(description).toEqual({
      files: [
        { file: "a.csv", excluded: { reason: "stumbled" } },
        { file: "b.csv", excluded: unread },
        { file: "c.csv", trial: 2, excluded: { reason: "hand on the rail" } },
        { file: "e.csv", excluded: unread },
      ],
    });
    expect(findings.map((each) => each.code)).toEqual(Array.from({ length: 8 }, () => "session-unreadable"));
    expect(told(findings[0])?.action).toBe("Correct it; until then files[0] is left out, the others are used.");
  });

  it("makes no attempt of a practice jump whose entry is misspelt", () => {
    const { description } = parse({
      files: [
        { file: "a.csv", practice: "yes" },
        { file: "b.csv", practise: true },
        { file: "c.csv", rateHz: "fast", practice: true },
        { file: "d.csv", rateHz: "fast", practice: false },
      ],
    });
    expect(description.files).toEqual(["a.csv", "b.csv", "c.csv"].map((file) => ({ file, practice: true })));
  });

  // The sentence completes "session.json is not understood at PLACE: … ".
  it.each([
    [{ involved: "rigth" }, "involved", 'one of left, right, both, none is expected, found "rigth".'],
    [{ pain: 11 }, "pain", "a number up to 10 is expected, found 11."],
    [{ massKg: 0 }, "massKg", "a number above 0 is expected, found 0."],
    [{ date: "12.10.2026" }, "date", 'a date written YYYY-MM-DD is expected, found "12.10.2026".'],
    [{ date: "2026-02-30" }, "date", 'a date written YYYY-MM-DD is expected, found "2026-02-30".'],
    [{ athlete: { name: "x" } }, "athlete.code", "text is expected, found nothing."],
    [{ files: {} }, "files", "a list is expected, found an object."],
    [{ files: ["a.csv"] }, "files[0]", 'an object in braces is expected, found "a.csv".'],
    [
      { files: [{ file: "../a.csv" }] },
      "files[0].file",
      'a path inside the session\'s folder with forward slashes is expected, found "../a.csv".',
    ],
    [{ files: [{ file: "a.csv", trial: 1.5 }] }, "files[0].trial", "a whole number is expected, found 1.5."],
    [
      { files: [{ file: "a.csv", excluded: { reason: "" } }] },
      "files[0].excluded.reason",
      'text that is not empty is expected, found "".',
    ],
    [
      { files: [{ file: "a.csv", columns: { left: 0 } }] },
      "files[0].columns.left",
      "a number from 1 is expected, found 0.",
    ],
    [
      { files: [{ file: "a.csv", columns: { left: null } }] },
      "files[0].columns.left",
      "a column's number from 1 or a column's name is expected, found null.",
    ],
    [{ files: [{ file: "a.csv", rate: 500 }] }, "files[0]", 'no entry called "rate" is expected.'],
    [{ seen: true }, "seen", undefined],
  ])("is told from what is expected: %j", (document, where, sentence) => {
    const { findings } = parse(document);
    expect(findings.map((each) => told(each).where)).toEqual([where]);
    const message =
      sentence === undefined
        ? 'session.json has an entry called "seen", which means nothing here.'
        : `session.json is not understood at ${where}: ${sentence}`;
    expect(told(findings[0])?.message).toBe(message);
  });

  it("includes a reference in a unit its measure does not have", () => {
    const good = full.references?.[0];
    const { description, findings } = parse({
      references: [good, { ...good, unit: "N" }, { ...good, measure: "hop" }],
    });
    expect(description.references).toEqual([good]);
    expect(findings.map((each) => told(each).where)).toEqual(["references[1]", "references[2]"]);
  });

  it("is placed by line and character where the text is not JSON", () => {
    const { description, findings } = parseSessionFile(utf8('{\n  "pain": 2,\n  "involved": "right",\n}\n'));
    expect(description).toEqual({});
    // Counted by hand: the closing brace in line 4 comes where a member should.
    expect(told(findings[0])?.message).toBe("session.json stops being JSON in line 4, character 1.");
    expect(told(parseSessionFile(new Uint8Array()).findings[0])?.message).toBe("session.json is empty.");
    expect(told(parse([1]).findings[0])?.message).toContain("an object in braces is expected, found a list");
  });

  it("closes the gate where it might have been the reason to", () => {
    const gate = (document: unknown) => {
      const { description, findings } = parse(document);
      return gateOf(description, defaultSettings, findings);
    };
    const past = { cautions: { answers: [{ notKnown: true, by: "K. L." }] } };
    expect(gate({ ...past, stopped: "pain" })).toMatchObject({
      open: false,
      reason: "What session.json says about a stop cannot be read.",
    });
    expect(gate({ ...past, pain: "5", effusion: "2" }).reason).toContain("about pain and effusion cannot be read");
    expect(gate({ cautions: "asked" }).reason).toContain("about the cautions cannot be read");
    expect(gate({ ...past, readings: [{ pain: 6 }] }).reason).toContain("readings of pain and effusion cannot be read");
    expect(gate({ ...past, massKg: "x", pain: 2 }).open).toBe(true);
    const broken = parseSessionFile(utf8("{"));
    expect(gateOf(broken.description, defaultSettings, broken.findings).open).toBe(false);
  });

  it("never throws, whatever the bytes", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(() => parseSessionFile(bytes)).not.toThrow();
      }),
    );
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(() => parse(value)).not.toThrow();
      }),
    );
    const text = writeSessionFile(full);
    for (let length = 0; length < text.length - 2; length += 1) {
      expect(parseSessionFile(utf8(text.slice(0, length))).findings.length).toBeGreaterThan(0);
    }
  });
});

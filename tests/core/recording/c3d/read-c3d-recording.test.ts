import { describe, expect, test } from "vitest";
import { inspectC3d } from "../../../../core/recording/c3d/inspect-c3d.ts";
import { readC3dRecording } from "../../../../core/recording/c3d/read-c3d-recording.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { told } from "../../../told.ts";
import { levelCorners, standingFile, twoPlatforms, type WrittenPlatform } from "../../bytes/c3d/standing-file.ts";
import { floats, integer, integers, texts, writeC3d } from "../../bytes/c3d/write-c3d.ts";
import { codesOf, readStanding } from "./read-written-c3d.ts";

// Expected values are those that the files were written with.

const byteOrders = ["Intel", "DEC", "SGI"] as const;

/** Scales of type 4 go through a calibration matrix, so that its products round in the last digits. */
const forceTolerance = 1e-9;

const stepping = (sample: number): number => 300 + (sample % 40) * 0.5;

describe.each(byteOrders)("in %s byte order", (byteOrder) => {
  test.each([
    [1, "integer"],
    [2, "float"],
    [3, "integer"],
    [4, "float"],
    [3, "float"],
    [4, "integer"],
  ] as const)("a platform of type %d in %s data gives the force upwards in newtons", (type, dataType) => {
    const read = readStanding({ byteOrder, dataType, platforms: [{ type, upward: stepping }], offset: 25 });
    expect(codesOf(read)).toEqual([]);
    expect(read.recording).toMatchObject({ rateHz: 1000, sampleCount: 200, timeOriginSeconds: 0 });
    const [plate] = read.recording?.plates ?? [];
    expect(plate).toMatchObject({ name: "force platform 1", limb: "both", proof: "unproved" });
    for (const sample of [0, 1, 39, 40, 199]) {
      expect(Math.abs(plate!.force[sample]! - stepping(sample))).toBeLessThan(forceTolerance);
    }
  });
});

describe("two platforms", () => {
  test("are left and right in the order of the file, unproved, with a warning", () => {
    const read = readStanding();
    expect(codesOf(read)).toEqual(["plates-unproved:note"]);
    expect(read.recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
      ["force platform 1", "left", "unproved"],
      ["force platform 2", "right", "unproved"],
    ]);
    expect(read.recording?.plates.map(({ force }) => force[3])).toEqual([301.5, 401.5]);
  });

  test("are left and right as their labels say, unproved all the same", () => {
    const labels = (side: string): string[] => "Fx Fy Fz Mx My Mz".split(" ").map((name) => `${side} ${name}`);
    const platforms = twoPlatforms.map((each, index) => ({ ...each, labels: labels(index === 0 ? "Right" : "Left") }));
    const read = readStanding({ platforms });
    expect(codesOf(read)).toEqual([]);
    expect(read.recording?.plates.map(({ limb, proof }) => [limb, proof])).toEqual([
      ["right", "unproved"],
      ["left", "unproved"],
    ]);
  });

  test("are what a person states, by number or name, and may be exchanged", () => {
    const stated = { left: 2, right: "Force platform 1", platesStated: true };
    expect(readStanding({}, stated).recording?.plates.map(({ limb, proof }) => [limb, proof])).toEqual([
      ["right", "stated"],
      ["left", "stated"],
    ]);
    const swapped = readStanding({}, { ...stated, swapPlates: true });
    expect(swapped.recording?.plates.map(({ limb }) => limb)).toEqual(["left", "right"]);
    expect(swapped.reading?.columns.map(({ limb }) => limb)).toEqual(["left", "right"]);
    const layout = { name: "laboratory", provesPlates: true };
    expect(readStanding({}, { left: 1, right: 2, layout }).recording?.plates[0]?.proof).toBe("layout");
  });

  test("are added where a person states both for one foot or for both feet", () => {
    const read = readStanding({}, { total: "1+2" });
    expect(codesOf(read)).toEqual([]);
    expect(read.recording?.plates).toHaveLength(1);
    expect(read.recording?.plates[0]).toMatchObject({ name: "force platform 1 + force platform 2", limb: "both" });
    expect(read.recording?.plates[0]?.force[3]).toBe(301.5 + 401.5);
  });

  test.each([{ left: 3 }, { left: "nobody" }, { left: 1, right: 1 }, { left: 1, total: 2 }])(
    "are refused where the statement %j cannot be meant",
    (answers) => {
      expect(codesOf(readStanding({}, answers))).toEqual(["columns-unclear:refusal"]);
    },
  );
});

describe("more than two platforms", () => {
  const empty: WrittenPlatform = { type: 2, upward: (sample) => 180 + (sample % 3) * 0.5 };

  test("count where they are loaded; an offset alone is no load", () => {
    const carrying = { type: 2, upward: (sample: number) => (sample < 50 ? 0 : 400) } as const;
    const read = readStanding({ platforms: [empty, carrying, empty, carrying] });
    expect(codesOf(read)).toEqual(["platforms-left-out:note", "plates-unproved:note"]);
    expect(read.recording?.plates.map(({ name, limb }) => [name, limb])).toEqual([
      ["force platform 2", "left"],
      ["force platform 4", "right"],
    ]);
    const single = readStanding({ platforms: [empty, carrying, empty] });
    expect(single.recording?.plates.map(({ name, limb }) => [name, limb])).toEqual([["force platform 2", "both"]]);
  });

  test("are asked about where three are loaded or none, and read as stated", () => {
    const carrying = { type: 2, upward: (sample: number) => sample * 2 } as const;
    const platforms = [carrying, carrying, carrying];
    expect(codesOf(readStanding({ platforms }))).toEqual(["columns-unclear:refusal"]);
    expect(codesOf(readStanding({ platforms: [empty, empty, empty] }))).toEqual(["columns-unclear:refusal"]);
    const read = readStanding({ platforms }, { left: 3, right: "1+2" });
    expect(read.recording?.plates.map(({ name, limb }) => [name, limb])).toEqual([
      ["force platform 1 + force platform 2", "right"],
      ["force platform 3", "left"],
    ]);
    expect(read.recording?.plates[0]?.force[100]).toBe(400);
  });

  test("may be of different types, with channels in any order", () => {
    const platforms: WrittenPlatform[] = [
      { type: 3, upward: (sample) => 200 + sample },
      { type: 2, upward: (sample) => 300 + sample },
    ];
    // Eight channels of the first platform, then six of the second; told the other way round.
    const numbers = [...[9, 10, 11, 12, 13, 14, 0, 0], ...[1, 2, 3, 4, 5, 6, 7, 8]];
    const changes = {
      "FORCE_PLATFORM:TYPE": integers([2, 3]),
      "FORCE_PLATFORM:CHANNEL": integers(numbers, [8, 2]),
    };
    const read = readStanding({ platforms, changes });
    expect(read.recording?.plates.map(({ force }) => [force[0], force[150]])).toEqual([
      [300, 450],
      [200, 350],
    ]);
  });
});

describe("units", () => {
  const inUnit = (unit: string, answers = {}) =>
    readStanding({ platforms: [{ type: 2, upward: stepping, unit }] }, answers);

  test.each([
    ["N", 1],
    ["nt", 1],
    ["kN", 1000],
    ["lbf", 4.4482216152605],
    ["kgf", 9.80665],
  ])("%s on the vertical channel is turned into newtons", (unit, factor) => {
    const read = inUnit(unit);
    expect(codesOf(read)).toEqual([]);
    expect(read.recording?.plates[0]?.force[3]).toBe(301.5 * factor);
  });

  test.each(["", "d.u."])("%j names no force, so newtons are taken with a warning", (unit) => {
    const read = inUnit(unit);
    expect(codesOf(read)).toEqual(["unit-not-stated:warning"]);
    expect(read.recording?.plates[0]?.force[3]).toBe(301.5);
  });

  test.each(["V", "mV", "Nm"])("%s is another quantity and asked about; a person's word settles it", (unit) => {
    expect(codesOf(inUnit(unit))).toEqual(["unit-not-stated:refusal"]);
    expect(inUnit(unit, { unit: "kN" }).recording?.plates[0]?.force[3]).toBe(301_500);
  });
});

describe("files without usable forces are refused with the reason", () => {
  test("points alone", () => {
    const file = { ...standingFile({ platforms: [] }), stored: [] };
    const read = readC3dRecording(writeC3d(file), {}, defaultSettings);
    expect(codesOf(read)).toEqual(["no-force-platform:refusal"]);
    expect(told(read.findings[0])?.message).toBe(
      "The file holds 2 points and no analog channels, so it holds no forces.",
    );
    expect(read.reading).toMatchObject({ kind: "c3d", points: 2, columns: [] });
  });

  test.each([undefined, integer(0)])("analog channels without a force platform (%j)", (used) => {
    const read = readStanding({ changes: { "FORCE_PLATFORM:USED": used } });
    expect(codesOf(read)).toEqual(["no-force-platform:refusal"]);
    expect(told(read.findings[0])?.message).toContain("12 analog channels");
  });

  test.each([0, 5, 6, 7, 21, 65535])("a platform of type %d, by number", (type) => {
    const changes = { "FORCE_PLATFORM:TYPE": integers([type]) };
    const read = readStanding({ platforms: [{ type: 2, upward: stepping }], changes });
    expect(codesOf(read)).toEqual(["platform-unreadable:warning", "no-force-platform:refusal"]);
    expect(told(read.findings[0])?.message).toContain(`of type ${type}`);
  });

  test("one platform of an unknown type does not cost the other", () => {
    const read = readStanding({ changes: { "FORCE_PLATFORM:TYPE": integers([7, 2]) } });
    expect(codesOf(read)).toEqual(["platform-unreadable:warning"]);
    expect(read.recording?.plates.map(({ name, limb }) => [name, limb])).toEqual([["force platform 2", "both"]]);
    expect(read.reading?.columns).toMatchObject([{ role: "unused" }, { role: "force" }]);
  });

  test.each([
    ["a channel outside the file", { "FORCE_PLATFORM:CHANNEL": integers([1, 2, 99, 4, 5, 6], [6, 1]) }, "channel 99"],
    ["a channel 0", { "FORCE_PLATFORM:CHANNEL": integers([1, 2, 0, 4, 5, 6], [6, 1]) }, "channel 0"],
    ["too few channels", { "FORCE_PLATFORM:CHANNEL": integers([1, 2, 3], [3, 1]) }, "6 channels"],
    ["no channels", { "FORCE_PLATFORM:CHANNEL": undefined }, "6 channels"],
    ["no type", { "FORCE_PLATFORM:TYPE": undefined }, "no type"],
    ["a scale that is no number", { "ANALOG:SCALE": floats([1, 1, Number.NaN, 1, 1, 1]) }, "channel 3"],
  ])("a platform with %s", (_name, changes, reason) => {
    const read = readStanding({ platforms: [{ type: 2, upward: stepping }], changes });
    expect(codesOf(read)).toEqual(["platform-unreadable:warning", "no-force-platform:refusal"]);
    expect(told(read.findings[0])?.message).toContain(reason);
  });

  test("a calibration matrix that is cut short; without any, channels count as they are with a warning", () => {
    const platforms = [{ type: 4, upward: stepping }] as const;
    const short = { "FORCE_PLATFORM:CAL_MATRIX": floats(Array(30).fill(1), [6, 5, 1]) };
    expect(codesOf(readStanding({ platforms, changes: short }))).toContain("platform-unreadable:warning");
    const none = readStanding({ platforms, changes: { "FORCE_PLATFORM:CAL_MATRIX": undefined } });
    expect(codesOf(none)).toEqual(["scaling-assumed:warning"]);
    // Its third diagonal value was 0.25.
    expect(none.recording?.plates[0]?.force[3]).toBe(301.5 * 4);
  });

  test("a stated number of platforms that nothing describes", () => {
    const read = readStanding({ changes: { "FORCE_PLATFORM:USED": integer(65535) } });
    expect(codesOf(read).slice(0, 2)).toEqual(["platform-unreadable:warning", "platform-unreadable:warning"]);
    expect(read.recording?.plates).toHaveLength(2);
    expect(read.reading?.platforms).toHaveLength(3);
  });

  test("a rate that nothing states is asked for, and taken from a person", () => {
    const file = { ...standingFile({ changes: { "POINT:RATE": undefined } }), frameRateHz: 0 };
    expect(codesOf(readC3dRecording(writeC3d(file), {}, defaultSettings))).toContain("rate-missing:refusal");
    const read = readC3dRecording(writeC3d(file), { rateHz: 1000 }, defaultSettings);
    expect(read.recording?.rateHz).toBe(1000);
    expect(read.reading?.rateFrom).toBe("stated");
    expect(codesOf(readStanding({}, { rateHz: 500 }))).toContain("rate-contradicts:refusal");
  });

  test("samples that are no numbers: left out at the ends, refused inside", () => {
    const file = standingFile({ dataType: "float", platforms: [{ type: 2, upward: stepping }] });
    const withNaN = (samples: readonly number[]): Uint8Array => {
      const stored = file.stored.map((channel, index) =>
        index === 2 ? channel.map((value, sample) => (samples.includes(sample) ? Number.NaN : value)) : channel,
      );
      return writeC3d({ ...file, stored });
    };
    const cut = readC3dRecording(withNaN([0, 199]), {}, defaultSettings);
    expect(codesOf(cut)).toEqual(["cells-unreadable:warning"]);
    expect(cut.recording).toMatchObject({ sampleCount: 198, timeOriginSeconds: 0.001 });
    expect(codesOf(readC3dRecording(withNaN([100]), {}, defaultSettings))).toEqual(["cells-unreadable:refusal"]);
  });
});

describe("what the file says beside its forces", () => {
  const changes = {
    "EVENT:USED": integer(2),
    "EVENT:LABELS": texts(["Foot Off", "Foot Strike"]),
    "EVENT:CONTEXTS": texts(["Left", "Right"]),
    "EVENT:TIMES": floats([0, 0.5, 1, 2.25], [2, 2]),
    "SUBJECTS:USED": integer(1),
    "SUBJECTS:NAMES": texts(["KP-17"]),
  };

  test("events and subjects are hints, and change no value", () => {
    const read = readStanding({ changes });
    expect(read.reading?.hints).toEqual([
      { name: "SUBJECTS:NAMES", value: "KP-17" },
      { name: "EVENT", value: "Foot Off (Left) at 0.500 s" },
      { name: "EVENT", value: "Foot Strike (Right) at 62.250 s" },
    ]);
    expect(read.recording).toEqual(readStanding().recording);
  });

  test("a count of events that the file does not hold makes none", () => {
    const many = { ...changes, "EVENT:USED": integer(65535) };
    expect(readStanding({ changes: many }).reading?.hints).toHaveLength(3);
  });

  test("the number of the first frame places the recording on the file's own clock", () => {
    const file = { ...standingFile(), firstFrame: 51 };
    expect(readC3dRecording(writeC3d(file), {}, defaultSettings).recording?.timeOriginSeconds).toBe(0.5);
  });
});

describe("an inspection", () => {
  test("holds every channel and platform in figures, at the samples asked for", () => {
    const platforms = [{ type: 3, upward: stepping, corners: levelCorners(100) }] as const;
    const inspection = inspectC3d(writeC3d(standingFile({ platforms })), [0, 3, 199, 200, -1], defaultSettings);
    expect(inspection.channels).toHaveLength(8);
    expect(inspection.channels[0]).toMatchObject({ label: "Fx12", unit: "N", scale: -0.5, offset: 0, rateHz: 1000 });
    // 300 to 319.5 N in steps of half a newton, five times.
    expect(inspection.platforms[0]).toMatchObject({
      number: 1,
      type: 3,
      channels: [1, 2, 3, 4, 5, 6, 7, 8],
      corners: levelCorners(100),
      unit: "N",
      upwardDirection: [0, 0, 1],
      stored: { minimum: -319.5, maximum: -300, mean: -309.75, values: [-300, -301.5, -319.5, null, null] },
      upwardNewtons: { minimum: 300, maximum: 319.5, mean: 309.75, values: [300, 301.5, 319.5, null, null] },
    });
    expect(inspection).toMatchObject({ upwardAxis: "+Z", storedForce: "reaction", findings: [] });
    expect(JSON.parse(JSON.stringify(inspection))).toEqual(inspection);
  });

  test("says why a platform has no figures, and is made of a file that cannot be read", () => {
    const changes = { "FORCE_PLATFORM:TYPE": integers([9, 2]) };
    const [first] = inspectC3d(writeC3d(standingFile({ changes })), [], defaultSettings).platforms;
    expect(first?.problem).toContain("type 9");
    expect(first?.stored).toBeUndefined();
    const cut = inspectC3d(writeC3d(standingFile()).subarray(0, 400), [0], defaultSettings);
    expect(cut).toMatchObject({ channels: [], platforms: [], findings: [{ code: "truncated", severity: "refusal" }] });
  });
});

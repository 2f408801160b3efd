import { describe, expect, test } from "vitest";
import { channelValues, sampleCountOf, storedValues } from "../../../../core/bytes/c3d/analog-samples.ts";
import type { C3dFile } from "../../../../core/bytes/c3d/c3d-file.ts";
import { readC3d } from "../../../../core/bytes/c3d/read-c3d.ts";
import { wordsOf } from "../../../../core/bytes/c3d/words.ts";
import { told } from "../../../told.ts";
import { standingFile } from "./standing-file.ts";
import {
  float,
  floats,
  integer,
  integers,
  texts,
  type WrittenC3d,
  type WrittenParameter,
  writeC3d,
} from "./write-c3d.ts";

// Expected values are those that the files were written with.

const byteOrders = ["Intel", "DEC", "SGI"] as const;

/** A file of one force plate, 20 frames of 10 samples at 1000 Hz, with some parameters and header words changed. */
function written(
  changes: Readonly<Record<string, WrittenParameter | undefined>> = {},
  others: Partial<WrittenC3d> = {},
): Uint8Array {
  return writeC3d({
    ...standingFile({ changes, platforms: [{ type: 2, upward: (sample) => 300 + sample }] }),
    ...others,
  });
}

function readFile(bytes: Uint8Array): { readonly file: C3dFile; readonly codes: readonly string[] } {
  const { file, findings } = readC3d(bytes);
  if (file === undefined)
    throw new Error(
      findings
        .map((each) => told(each))
        .map(({ message }) => message)
        .join(" "),
    );
  return { file, codes: findings.map(({ code, severity }) => `${code}:${severity}`) };
}

/** 300 + sample newtons are twice as many counts. */
const verticalCounts = (sample: number): number => 2 * (300 + sample);

describe("VAX floating-point numbers", () => {
  // C3D notes, §1: the two worked numbers of the format's description; the others by its formula.
  test.each([
    [[0x80, 0x40, 0x00, 0x00], 1],
    [[0xed, 0xc3, 0x00, 0x40], -118.625],
    [[0x00, 0x40, 0x00, 0x00], 0.5],
    [[0x00, 0x00, 0xff, 0xff], 0],
    [[0x00, 0x80, 0x00, 0x00], 0],
    [[0xff, 0x7f, 0xff, 0xff], (1 - 2 ** -24) * 2 ** 127],
    [[0x80, 0x00, 0x00, 0x00], 2 ** -128],
  ])("%j are %d", (bytes, value) => {
    expect(wordsOf(Uint8Array.from(bytes), "DEC").float32(0)).toBe(value);
  });
});

describe.each(byteOrders)("a file in %s byte order", (byteOrder) => {
  test.each(["integer", "float"] as const)("with %s data gives back counts, scale and rate", (dataType) => {
    const platforms = [{ type: 2, upward: (sample: number) => 300 + sample }] as const;
    const { file, codes } = readFile(writeC3d(standingFile({ byteOrder, dataType, platforms, offset: -7 })));
    expect(codes).toEqual([]);
    expect(file).toMatchObject({ frameRateHz: 100, analogRateHz: 1000, generalScale: 1, isUnsigned: false });
    expect(file.layout).toMatchObject({ points: 2, channelCount: 6, samplesPerFrame: 10, dataType, frames: 20 });
    expect(file.channels[2]).toEqual({ number: 3, label: "Fz", unit: "N", scale: -0.5, offset: -7 });
    expect(sampleCountOf(file)).toBe(200);
    const stored = storedValues(file, 3);
    const values = channelValues(file, 3);
    for (const sample of [0, 1, 10, 199]) {
      expect(stored[sample]).toBe(verticalCounts(sample) - 7);
      expect(values[sample]).toBe(-(300 + sample));
    }
  });
});

describe("scaling", () => {
  test("is (stored − offset) × scale × general scale, any sign allowed", () => {
    const { file } = readFile(
      written({ "ANALOG:GEN_SCALE": float(-2), "ANALOG:OFFSET": integers(Array(6).fill(100)) }),
    );
    expect(channelValues(file, 3)[5]).toBe((verticalCounts(5) - 100) * -0.5 * -2);
  });

  test.each([
    ["UNSIGNED said", texts(["UNSIGNED"]), 40000, true],
    ["SIGNED said", texts(["SIGNED"]), 40000 - 65536, false],
    ["nothing said and a large offset", undefined, 40000, true],
    ["nothing said and a small offset", undefined, 2048, false],
  ])("takes integers as they are meant: %s", (_name, format, offset, isUnsigned) => {
    const platforms = [{ type: 2, upward: (sample: number) => 300 + sample }] as const;
    const { file, codes } = readFile(
      writeC3d(standingFile({ platforms, offset, changes: { "ANALOG:FORMAT": format } })),
    );
    expect(codes).toEqual([]);
    expect(file.isUnsigned).toBe(isUnsigned);
    expect(file.channels[2]?.offset).toBe(offset);
    expect(channelValues(file, 3)[7]).toBe(-(300 + 7));
  });

  test("takes a floating-point offset as it is", () => {
    const { file } = readFile(written({ "ANALOG:OFFSET": floats(Array(6).fill(1.5)) }));
    expect(channelValues(file, 3)[0]).toBe((verticalCounts(0) - 1.5) * -0.5);
  });

  test.each([
    ["ANALOG:GEN_SCALE", undefined],
    ["ANALOG:SCALE", undefined],
    ["ANALOG:OFFSET", undefined],
    ["ANALOG:SCALE", floats([-0.5, -0.5])],
    ["ANALOG:GEN_SCALE", texts(["1"])],
  ])("says that %s is missing, too short or text", (key, change) => {
    expect(readFile(written({ [key]: change })).codes).toEqual(["scaling-assumed:warning"]);
  });

  test("takes the first values of a list that is longer than the channels", () => {
    const { file, codes } = readFile(written({ "ANALOG:SCALE": floats([...Array(6).fill(-0.5), 9, 9, 9]) }));
    expect(codes).toEqual([]);
    expect(channelValues(file, 3)[0]).toBe(-300);
  });

  test("goes on in LABELS2, SCALE2, OFFSET2 and UNITS2 beyond 255 channels", () => {
    const count = 300;
    const channels = Array.from({ length: count }, (_, index) => index);
    const split = <Value>(list: readonly Value[]) => [list.slice(0, 255), list.slice(255)] as const;
    const [labels, moreLabels] = split(channels.map((index) => `C${index + 1}`));
    const [units, moreUnits] = split(channels.map((index) => `u${index + 1}`));
    const [scales, moreScales] = split(channels.map((index) => index + 1));
    const [offsets, moreOffsets] = split(channels.map((index) => index));
    const file = {
      ...standingFile({
        frames: 3,
        samplesPerFrame: 2,
        changes: {
          "ANALOG:USED": integer(count),
          "ANALOG:LABELS": texts(labels),
          "ANALOG:LABELS2": texts(moreLabels),
          "ANALOG:UNITS": texts(units),
          "ANALOG:UNITS2": texts(moreUnits),
          "ANALOG:SCALE": floats(scales),
          "ANALOG:SCALE2": floats(moreScales),
          "ANALOG:OFFSET": integers(offsets),
          "ANALOG:OFFSET2": integers(moreOffsets),
        },
      }),
      stored: channels.map((index) => [0, 1, 2, 3, 4, 5].map((sample) => index + sample)),
    };
    const { file: read, codes } = readFile(writeC3d(file));
    expect(codes).toEqual([]);
    expect(read.channels[299]).toEqual({ number: 300, label: "C300", unit: "u300", scale: 300, offset: 299 });
    expect([...channelValues(read, 300)]).toEqual([0, 300, 600, 900, 1200, 1500]);
  });
});

describe("counts that are stated twice", () => {
  test.each<[string, Readonly<Record<string, WrittenParameter>>, Partial<WrittenC3d>, object]>([
    ["ANALOG:USED is wrong", { "ANALOG:USED": integer(5) }, {}, { channelCount: 6, samplesPerFrame: 10 }],
    ["header word 3 is too small", {}, { headerWords: new Map([[3, 10]]) }, { channelCount: 6, samplesPerFrame: 10 }],
    ["header word 10 is wrong", {}, { headerWords: new Map([[10, 5]]) }, { channelCount: 6, samplesPerFrame: 10 }],
    ["header word 10 is 0", {}, { headerWords: new Map([[10, 0]]) }, { channelCount: 6, samplesPerFrame: 10 }],
    ["POINT:USED is wrong", { "POINT:USED": integer(3) }, {}, { points: 2 }],
    ["the header's points are wrong", {}, { headerWords: new Map([[2, 9]]) }, { points: 2 }],
    [
      "the header's data start is wrong",
      { "POINT:DATA_START": integer(4) },
      { headerWords: new Map([[9, 3]]) },
      { dataStartBlock: 4 },
    ],
    ["POINT:DATA_START is wrong", { "POINT:DATA_START": integer(6) }, {}, { dataStartBlock: 4 }],
    ["the header's scale says floating-point", {}, { headerWords: new Map([[7, -1]]) }, { dataType: "integer" }],
    ["POINT:FRAMES is wrong", { "POINT:FRAMES": integer(400) }, {}, { statedFrames: 20 }],
    ["the header's frames are wrong", {}, { headerWords: new Map([[5, 18]]) }, { statedFrames: 20 }],
  ])("count as they fit the length of the file, with a finding: %s", (_name, changes, others, layout) => {
    const { file, codes } = readFile(written(changes, others));
    expect(codes).toContain("parts-contradict:warning");
    expect(file.layout).toMatchObject(layout);
    expect(channelValues(file, 3)[199]).toBe(-(300 + 199));
  });

  test("agree when the parameter copy of the data start was never filled in", () => {
    for (const copy of [0, 1]) expect(readFile(written({ "POINT:DATA_START": integer(copy) })).codes).toEqual([]);
  });

  test("are told when whole frames stand behind the stated ones", () => {
    const bytes = written({ "POINT:FRAMES": integer(15) }, { headerWords: new Map([[5, 15]]) });
    const { file, codes } = readFile(bytes);
    expect(file.layout.frames).toBe(15);
    expect(codes).toEqual(["parts-contradict:warning"]);
  });
});

describe("the number of frames", () => {
  const many = 70_000;
  const longFile = (changes: Readonly<Record<string, WrittenParameter | undefined>>): Uint8Array =>
    writeC3d({
      ...standingFile({
        frames: many,
        samplesPerFrame: 1,
        points: 0,
        platforms: [{ type: 2, upward: (sample) => 300 + (sample % 100) }],
        changes,
      }),
    });
  const fields = {
    "TRIAL:ACTUAL_START_FIELD": integers([1, 0]),
    "TRIAL:ACTUAL_END_FIELD": integers([many & 65535, many >> 16]),
  };

  test("may be more than 65535, stated by the trial's fields, LONG_FRAMES or a floating-point number", () => {
    for (const changes of [
      { "POINT:FRAMES": integer(65535), ...fields },
      { "POINT:FRAMES": integer(65535), "POINT:LONG_FRAMES": float(many) },
      { "POINT:FRAMES": float(many) },
    ]) {
      const { file } = readFile(longFile(changes));
      expect(file.layout.frames).toBe(many);
      expect(channelValues(file, 3)[many - 1]).toBe(-(300 + ((many - 1) % 100)));
    }
  });

  test("that overflowed its 16 bits is set right by the trial's fields, and said", () => {
    const { file, codes } = readFile(longFile({ "POINT:FRAMES": integer(many & 65535), ...fields }));
    expect(file.layout.frames).toBe(many);
    expect(codes).toContain("parts-contradict:warning");
  });

  test("above 32767 is read without sign", () => {
    const frames = 40_000;
    const platforms = [{ type: 2, upward: () => 300 }] as const;
    const { file, codes } = readFile(writeC3d(standingFile({ frames, samplesPerFrame: 1, points: 0, platforms })));
    expect(codes).toEqual([]);
    expect(file.layout.frames).toBe(frames);
  });

  test("comes from the header where the parameter is missing", () => {
    const { file, codes } = readFile(written({ "POINT:FRAMES": undefined }));
    expect(codes).toEqual([]);
    expect(file.layout.frames).toBe(20);
  });

  test("is cut down to what the file holds, with place and count", () => {
    const bytes = written();
    const { file, findings } = readC3d(bytes.subarray(0, 3 * 512 + 5 * 136 + 100));
    expect(file?.layout).toMatchObject({ frames: 5, statedFrames: 20 });
    expect(findings.map((each) => told(each))).toMatchObject([
      { code: "truncated", severity: "warning", where: "0.050 s" },
    ]);
    expect(told(findings[0])?.message).toBe("The file states 20 frames and holds 5: the last 15 are missing.");
  });
});

describe("rates", () => {
  test("need no ANALOG:RATE", () => {
    const { file, codes } = readFile(written({ "ANALOG:RATE": undefined }));
    expect(codes).toEqual([]);
    expect(file.analogRateHz).toBe(1000);
  });

  test("come from the header where POINT:RATE is missing", () => {
    expect(readFile(written({ "POINT:RATE": undefined })).file.analogRateHz).toBe(1000);
  });

  test.each([
    ["ANALOG:RATE", { "ANALOG:RATE": float(1020) }, 1000],
    ["POINT:RATE", { "POINT:RATE": float(50) }, 1000],
    ["POINT:RATE without ANALOG:RATE", { "POINT:RATE": float(50), "ANALOG:RATE": undefined }, 500],
  ])("that contradict each other are told: %s", (_name, changes, rateHz) => {
    const { file, codes } = readFile(written(changes));
    expect(file.analogRateHz).toBe(rateHz);
    expect(codes).toContain("rate-contradicts:warning");
  });

  test("are unknown where every place holds nothing", () => {
    const bytes = written({ "POINT:RATE": float(0) }, { frameRateHz: 0 });
    expect(readFile(bytes).file.analogRateHz).toBeUndefined();
  });
});

describe("the parameter section", () => {
  test("may have locked, described and late groups, names in small letters, and another first block", () => {
    const base = standingFile();
    const parameters = new Map(
      [...base.parameters].map(([key, parameter]) => [
        key.toLowerCase(),
        { ...parameter, isLocked: true, description: "x".repeat(200) },
      ]),
    );
    const { file, codes } = readFile(writeC3d({ ...base, parameters, groupsLast: true, parameterBlock: 5 }));
    expect(codes).toEqual([]);
    expect(file.parameterBlock).toBe(5);
    expect(channelValues(file, 3)[0]).toBe(-300);
  });

  test("is read to its end whatever number of blocks it states", () => {
    const bytes = written();
    for (const blocks of [0, 1, 255]) {
      bytes[512 + 2] = blocks;
      expect(readFile(bytes).codes).toEqual([]);
    }
  });

  test("may end in a pointer that leads out of it, and says so", () => {
    const { file, codes } = readFile(written({ "SUBJECT:LAST": { ...integer(1), next: 0x3f01 } }));
    expect(codes).toEqual(["parameters-damaged:note"]);
    expect(channelValues(file, 3)[0]).toBe(-300);
  });

  test("may end in a pointer of 0", () => {
    expect(readFile(written({ "SUBJECT:LAST": { ...integer(1), next: 0 } })).codes).toEqual([]);
  });

  test("follows its pointers past a record that it cannot read", () => {
    const { file, codes } = readFile(
      written({ "POINT:ODD": { ...integer(1), typeCode: 9 }, "SUBJECT:LAST": integer(1) }),
    );
    expect(codes).toEqual(["parameters-damaged:note"]);
    expect(file.parameters.entries.has("SUBJECT:LAST")).toBe(true);
  });

  test("states values that it has no room for without their being made", () => {
    const bytes = written({ "POINT:HUGE": { type: "float", dimensions: Array(7).fill(255), values: [] } });
    expect(readFile(bytes).codes).toEqual(["parameters-damaged:note"]);
  });

  test.each([
    [83, "unreadable"],
    [0, "unreadable"],
  ])("of the processor %d is refused by number", (processor, code) => {
    const bytes = written();
    bytes[512 + 3] = processor;
    const { file, findings } = readC3d(bytes);
    expect(file).toBeUndefined();
    expect(findings.map((each) => told(each))).toMatchObject([{ code, severity: "refusal", where: "byte 515" }]);
    expect(told(findings[0])?.message).toContain(`processor ${processor}`);
  });
});

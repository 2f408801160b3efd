import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dataStartOf, frameBytesOf } from "../../../../core/bytes/c3d/frame-layout.ts";
import { readC3d } from "../../../../core/bytes/c3d/read-c3d.ts";
import { inspectC3d } from "../../../../core/recording/c3d/inspect-c3d.ts";
import { readC3dRecording } from "../../../../core/recording/c3d/read-c3d-recording.ts";
import { readRecording } from "../../../../core/recording/read-recording.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { c3dSamples } from "../../bytes/c3d/c3d-samples.ts";
import { type StandingFile, standingFile, type WrittenPlatform } from "../../bytes/c3d/standing-file.ts";
import { floats, integer, integers, texts, writeC3d } from "../../bytes/c3d/write-c3d.ts";
import { anyC3d, complaintAboutC3d } from "./damaged-c3d.ts";

const cuts = 64;
const flips = 200;

const platform = (type: 1 | 2 | 3 | 4): WrittenPlatform => ({ type, upward: (sample) => 300 + (sample % 40) * 0.5 });

const hints = {
  "EVENT:USED": integer(1),
  "EVENT:LABELS": texts(["Foot Off"]),
  "EVENT:TIMES": floats([0, 0.5], [2, 1]),
  "SUBJECTS:NAMES": texts(["KP-17"]),
};

const unsigned = { "ANALOG:FORMAT": texts(["UNSIGNED"]) };

const ownFiles: readonly (StandingFile & { readonly name: string })[] = [
  { name: "Intel, integer, type 1", platforms: [platform(1)] },
  { name: "DEC, float, types 2 and 3", byteOrder: "DEC", dataType: "float", platforms: [platform(2), platform(3)] },
  { name: "SGI, integer, type 4, hints", byteOrder: "SGI", platforms: [platform(4)], changes: hints },
  { name: "SGI, float, two of type 2", byteOrder: "SGI", dataType: "float" },
  { name: "Intel, unsigned, action", offset: 40000, changes: unsigned, holdsAction: true, platforms: [platform(2)] },
];

const files = [
  ...ownFiles.map(({ name, ...options }) => ({ name, bytes: writeC3d(standingFile(options)) })),
  ...c3dSamples().map(({ name, bytes }) => ({ name, bytes })),
];

/** More than two loaded platforms leave open which foot stood where. */
const answersFor = (name: string) => (name === "TYPE-3.c3d" ? { left: 1, right: 2 } : {});

/** What a file gives: its values, and everything that was understood and found beside them. */
function readAll(name: string, bytes: Uint8Array): { readonly values: unknown; readonly understood: unknown } {
  const { channels, platforms, ...inspected } = inspectC3d(bytes, [0, 10, 100], defaultSettings);
  const { recording, ...others } = readC3dRecording(bytes, answersFor(name), defaultSettings);
  const figures = channels.map(({ minimum, maximum, mean, values }) => [minimum, maximum, mean, values]);
  return {
    values: { figures, recording },
    understood: {
      inspected,
      channels: channels.map(({ label, unit, scale, offset, rateHz }) => ({ label, unit, scale, offset, rateHz })),
      platforms: platforms.map(({ stored: _stored, upwardNewtons: _upward, ...rest }) => rest),
      ...others,
    },
  };
}

describe.each(files)("$name", ({ name, bytes }) => {
  const { layout } = readC3d(bytes).file!;
  const dataStart = dataStartOf(layout);
  const statedEnd = dataStart + layout.frames * frameBytesOf(layout);
  const whole = readAll(name, bytes);

  test("reads as a recording when unharmed", () => {
    const { recording, findings } = readC3dRecording(bytes, answersFor(name), defaultSettings);
    expect(findings.filter(({ severity }) => severity === "refusal")).toEqual([]);
    expect(recording?.sampleCount).toBe(layout.frames * layout.samplesPerFrame);
  });

  test("cut at any of 64 places is read or refused, and a cut in the stated data is a finding", () => {
    for (let place = 0; place < cuts; place++) {
      const length = Math.floor((place * bytes.length) / cuts);
      const cut = bytes.subarray(0, length);
      const { findings, recording } = readC3dRecording(cut, answersFor(name), defaultSettings);
      inspectC3d(cut, [0, length], defaultSettings);
      if (length < statedEnd)
        expect(
          findings.map(({ code }) => code),
          `cut at ${length}`,
        ).toContain("truncated");
      // By the common route, which takes a stump without a whole header for text.
      const routed = readRecording({ path: name, bytes: cut, sha256: "" }, answersFor(name), defaultSettings);
      if (length < statedEnd) expect(routed.findings, `cut at ${length}`).not.toEqual([]);
      if (length < dataStart) expect(recording, `cut at ${length}`).toBeUndefined();
    }
  });

  test("with any of 200 flipped bits anywhere is read or refused, never with an exception", () => {
    const flip = fc.record({ place: fc.nat({ max: bytes.length - 1 }), bit: fc.nat({ max: 7 }) });
    for (const { place, bit } of fc.sample(flip, { numRuns: flips, seed: 5 })) {
      const damaged = flipped(bytes, place, bit);
      const { recording, findings } = readC3dRecording(damaged, answersFor(name), defaultSettings);
      const isRefused = findings.some(({ severity }) => severity === "refusal");
      expect(isRefused, `byte ${place}, bit ${bit}`).toBe(recording === undefined);
      for (const plate of recording?.plates ?? []) expect(plate.force.every(Number.isFinite)).toBe(true);
    }
  });

  test("with any of 200 flipped bits in header or parameters shows what it changed", () => {
    const flip = fc.record({ place: fc.nat({ max: dataStart - 1 }), bit: fc.nat({ max: 7 }) });
    for (const { place, bit } of fc.sample(flip, { numRuns: flips, seed: 7 })) {
      const { values, understood } = readAll(name, flipped(bytes, place, bit));
      if (isDeepStrictEqual(values, whole.values)) continue;
      expect(understood, `byte ${place}, bit ${bit}`).not.toEqual(whole.understood);
    }
  });
});

function flipped(bytes: Uint8Array, place: number, bit: number): Uint8Array {
  const damaged = bytes.slice();
  damaged[place] = damaged[place]! ^ (1 << bit);
  return damaged;
}

describe("whatever stands in a C3D file", () => {
  test("it is read or refused: any header, any stretch of parameters, any cut, any bytes behind the mark", () => {
    fc.assert(
      fc.property(anyC3d, (bytes) => complaintAboutC3d(bytes) === undefined),
      { numRuns: 2000 },
    );
  });

  test("largest counts everywhere make no large arrays", () => {
    const changes = {
      "POINT:USED": integer(65535),
      "POINT:FRAMES": integer(65535),
      "POINT:LONG_FRAMES": floats([4e9], []),
      "ANALOG:USED": integer(65535),
      "FORCE_PLATFORM:USED": integer(65535),
      "EVENT:USED": integer(65535),
      "TRIAL:ACTUAL_START_FIELD": integers([1, 0]),
      "TRIAL:ACTUAL_END_FIELD": integers([65535, 65535]),
    };
    const headerWords = new Map([2, 3, 5, 10].map((word) => [word, 65535]));
    const bytes = writeC3d({ ...standingFile({ changes }), headerWords });
    const { recording, findings } = readC3dRecording(bytes, {}, defaultSettings);
    expect(recording).toBeUndefined();
    expect(findings.filter(({ severity }) => severity === "refusal").map(({ code }) => code)).toContain("truncated");
    const inspection = inspectC3d(bytes, [0], defaultSettings);
    expect(inspection.sampleCount).toBe(0);
  });
});

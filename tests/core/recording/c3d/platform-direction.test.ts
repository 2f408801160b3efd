import { describe, expect, test } from "vitest";
import { told } from "../../../told.ts";
import { levelCorners, twoPlatforms, type WrittenPlatform } from "../../bytes/c3d/standing-file.ts";
import { floats } from "../../bytes/c3d/write-c3d.ts";
import { codesOf, readStanding } from "./read-written-c3d.ts";

// Expected values are those that the files were written with.

const stepping = (sample: number): number => 300 + (sample % 40) * 0.5;

describe("the direction of the force", () => {
  test("is turned where the file holds the action of the foot, and said", () => {
    const read = readStanding({ holdsAction: true, platforms: twoPlatforms });
    expect(codesOf(read)).toEqual(["sign-turned:note", "plates-unproved:note"]);
    expect(read.reading?.storedForce).toBe("action");
    expect(read.recording?.plates.map(({ force }) => force[3])).toEqual([301.5, 401.5]);
  });

  test("comes from the largest load of all platforms, neither from an offset nor from one stray sample", () => {
    const platforms: WrittenPlatform[] = [
      { type: 2, upward: (sample) => (sample < 40 ? 400 : -200) },
      { type: 2, upward: (sample) => (sample === 90 ? -5000 : 0) },
    ];
    const read = readStanding({ platforms });
    expect(read.reading?.storedForce).toBe("reaction");
    expect(read.recording?.plates[0]?.force[0]).toBe(400);
  });

  // Right-handed axes with z into the plate, drawn by hand: x from the second corner to the first, y = z × x.
  test.each([
    [
      "+Z",
      [
        [400, 0, 0],
        [0, 0, 0],
        [0, 600, 0],
        [400, 600, 0],
      ],
    ],
    [
      "-Z",
      [
        [400, 600, 0],
        [0, 600, 0],
        [0, 0, 0],
        [400, 0, 0],
      ],
    ],
    [
      "+Y",
      [
        [0, 0, 0],
        [600, 0, 0],
        [600, 0, 400],
        [0, 0, 400],
      ],
    ],
    [
      "+X",
      [
        [0, 400, 600],
        [0, 400, 0],
        [0, 0, 0],
        [0, 0, 600],
      ],
    ],
  ] as const)("names the laboratory's axis that points up: %s", (axis, corners) => {
    const read = readStanding({ platforms: [{ type: 2, upward: stepping, corners }] });
    expect(codesOf(read)).toEqual([]);
    expect(read.reading?.upwardAxis).toBe(axis);
    expect(read.reading?.platforms[0]?.tiltDegrees).toBeCloseTo(0, 9);
    expect(read.recording?.plates[0]?.force[3]).toBe(301.5);
  });

  test("is the laboratory's vertical on a tilted plate, and the plate's own within two degrees", () => {
    // A plate turned about its y axis: its x axis rises by the angle.
    const tilted = (degrees: number): WrittenPlatform => {
      const [x, z] = [400 * Math.cos((degrees * Math.PI) / 180), 400 * Math.sin((degrees * Math.PI) / 180)];
      return {
        type: 2,
        upward: () => 800,
        alongX: () => 100,
        corners: [
          [x, 0, z],
          [0, 0, 0],
          [0, 600, 0],
          [x, 600, z],
        ],
      };
    };
    const read = readStanding({ platforms: [tilted(10)] });
    expect(codesOf(read)).toEqual(["platform-tilted:warning"]);
    expect(told(read.findings[0])?.message).toContain("10.0 degrees");
    expect(read.reading?.platforms[0]?.tiltDegrees).toBeCloseTo(10, 5);
    // By hand: 800 N along the plate's upwards and 100 N along its x axis, which rises.
    const angle = (10 * Math.PI) / 180;
    expect(read.recording?.plates[0]?.force[0]).toBeCloseTo(800 * Math.cos(angle) + 100 * Math.sin(angle), 4);
    const level = readStanding({ platforms: [tilted(1.5)] });
    expect(codesOf(level)).toEqual([]);
    expect(level.recording?.plates[0]?.force[0]).toBe(800);
    const action = readStanding({ platforms: [{ ...tilted(10), alongX: () => 100 }], holdsAction: true });
    expect(action.recording?.plates[0]?.force).toEqual(read.recording?.plates[0]?.force);
  });

  test("is the plate's own where its corners stand in another order than those of the others, and said", () => {
    const turned = [...levelCorners(1000)].reverse();
    const platforms = [...twoPlatforms, { type: 2, upward: stepping, corners: turned } as const];
    const read = readStanding({ platforms }, { left: 1, right: 3 });
    expect(codesOf(read)).toEqual(["platform-tilted:warning"]);
    expect(told(read.findings[0])?.message).toContain("force platform 3 by 180 degrees");
    expect(read.reading?.upwardAxis).toBe("+Z");
    expect(read.recording?.plates[1]?.force[3]).toBe(301.5);
  });

  test("is the plate's own where corners are missing or span no plane, and said", () => {
    for (const corners of [undefined, floats(Array(12).fill(5), [3, 4, 1])]) {
      const read = readStanding({
        platforms: [{ type: 2, upward: stepping }],
        changes: { "FORCE_PLATFORM:CORNERS": corners },
      });
      expect(codesOf(read)).toEqual(["platform-tilted:warning"]);
      expect(read.recording?.plates[0]?.force[3]).toBe(301.5);
    }
  });
});

import type { ByteOrder } from "../../../../core/bytes/c3d/words.ts";
import { float, floats, integer, integers, texts, type WrittenC3d, type WrittenParameter } from "./write-c3d.ts";

/** A platform to be written: its vertical force, and how the file holds it. */
export interface WrittenPlatform {
  readonly type: 1 | 2 | 3 | 4;
  /** Vertical ground reaction force at a sample, newtons, upward positive; multiples of 0.5 are kept exactly. */
  readonly upward: (sample: number) => number;
  /** Four corners; a level plate with z down where absent. */
  readonly corners?: readonly (readonly [number, number, number])[];
  /** Ground reaction force along x in plate axes, newtons. */
  readonly alongX?: (sample: number) => number;
  readonly labels?: readonly string[];
  readonly unit?: string;
}

export interface StandingFile {
  readonly byteOrder?: ByteOrder;
  readonly dataType?: "integer" | "float";
  readonly platforms?: readonly WrittenPlatform[];
  readonly frames?: number;
  readonly samplesPerFrame?: number;
  readonly points?: number;
  /** True: the file holds the force of the foot on the plate. */
  readonly holdsAction?: boolean;
  /** Counts that stand for nothing. */
  readonly offset?: number;
  /** Parameters in place of the usual ones; undefined leaves one out. */
  readonly changes?: Readonly<Record<string, WrittenParameter | undefined>>;
}

/** Newtons of one count, before the sign of the guide's reaction. */
const newtonsPerCount = 0.5;

/** Corners of a level plate of 400 by 600 mm whose z axis points down. */
export function levelCorners(atX = 0): readonly (readonly [number, number, number])[] {
  return [
    [atX + 400, 0, 0],
    [atX, 0, 0],
    [atX, 600, 0],
    [atX + 400, 600, 0],
  ];
}

/** Two platforms of type 2 under somebody who stands: 300 N and 400 N that change with the sample. */
export const twoPlatforms: readonly WrittenPlatform[] = [
  { type: 2, upward: (sample) => 300 + (sample % 40) * 0.5 },
  { type: 2, upward: (sample) => 400 + (sample % 30) * 0.5, corners: levelCorners(500) },
];

/** A calibration matrix that mixes no axes but scales each differently, by columns. */
const calibration = [0.5, 0.5, 0.25, 0.125, 0.125, 0.125];

/** A whole small C3D file of somebody standing on force platforms, 1000 Hz unless changed. */
export function standingFile(options: StandingFile = {}): WrittenC3d {
  const {
    byteOrder = "Intel",
    dataType = "integer",
    platforms = twoPlatforms,
    frames = 20,
    samplesPerFrame = 10,
    points = 2,
    holdsAction = false,
    offset = 0,
    changes = {},
  } = options;
  const count = frames * samplesPerFrame;
  const channels = platforms.flatMap((platform) => channelsOf(platform, count, holdsAction));
  const rows = platforms.some(({ type }) => type === 3) ? 8 : 6;
  let next = 1;
  const numbers = platforms.flatMap(({ type }) => {
    const own = Array.from({ length: type === 3 ? 8 : 6 }, () => next++);
    return [...own, ...Array<number>(rows - own.length).fill(0)];
  });
  const used = platforms.length;
  const usual: Readonly<Record<string, WrittenParameter | undefined>> = {
    "POINT:USED": integer(points),
    "POINT:FRAMES": integer(frames),
    "POINT:SCALE": float(dataType === "float" ? -0.1 : 0.1),
    "POINT:RATE": float(1000 / samplesPerFrame),
    "POINT:UNITS": texts(["mm"]),
    "ANALOG:USED": integer(channels.length),
    "ANALOG:LABELS": texts(channels.map(({ label }) => label)),
    "ANALOG:UNITS": texts(channels.map(({ unit }) => unit)),
    "ANALOG:GEN_SCALE": float(1),
    "ANALOG:SCALE": floats(channels.map(({ scale }) => scale)),
    "ANALOG:OFFSET": integers(channels.map(() => offset)),
    "ANALOG:RATE": float(1000),
    "FORCE_PLATFORM:USED": integer(used),
    "FORCE_PLATFORM:TYPE": integers(platforms.map(({ type }) => type)),
    "FORCE_PLATFORM:ZERO": integers([0, 0]),
    "FORCE_PLATFORM:CORNERS": floats(
      platforms.flatMap(({ corners }) => (corners ?? levelCorners()).flat()),
      [3, 4, used],
    ),
    "FORCE_PLATFORM:ORIGIN": floats(
      platforms.flatMap(() => [0, 0, -40]),
      [3, used],
    ),
    "FORCE_PLATFORM:CHANNEL": integers(numbers, [rows, used]),
    "FORCE_PLATFORM:CAL_MATRIX": floats(
      platforms.flatMap(() => Array.from({ length: 36 }, (_, at) => (at % 7 === 0 ? calibration[at / 7]! : 0))),
      [6, 6, used],
    ),
  };
  const parameters = new Map<string, WrittenParameter>();
  for (const [key, parameter] of Object.entries({ ...usual, ...changes })) {
    if (parameter !== undefined) parameters.set(key, parameter);
  }
  return {
    byteOrder,
    dataType,
    points,
    frames,
    samplesPerFrame,
    frameRateHz: 1000 / samplesPerFrame,
    stored: channels.map(({ stored }) => stored.map((value) => value + offset)),
    parameters,
  };
}

interface WrittenChannel {
  readonly label: string;
  readonly unit: string;
  readonly scale: number;
  readonly stored: readonly number[];
}

function channelsOf(platform: WrittenPlatform, count: number, holdsAction: boolean): readonly WrittenChannel[] {
  const { type, upward, alongX = () => 0, labels, unit = "N" } = platform;
  const samples = Array.from({ length: count }, (_, sample) => sample);
  // The guide's reaction: a positive count, a negative scale. The action: the other way round.
  const sign = holdsAction ? 1 : -1;
  const counts = samples.map((sample) => Math.round(upward(sample) / newtonsPerCount));
  const sideways = samples.map((sample) => -Math.round(alongX(sample) / newtonsPerCount));
  const none = samples.map(() => 0);
  const names = labels ?? (type === 3 ? "Fx12 Fx34 Fy14 Fy23 Fz1 Fz2 Fz3 Fz4" : "Fx Fy Fz Mx My Mz").split(" ");
  const stored =
    type === 3
      ? // Four sensors carry unequal parts of the vertical force.
        [sideways, none, none, none, ...[0.1, 0.2, 0.3].map((part) => counts.map((each) => Math.round(each * part)))]
      : [sideways, none, counts, none, none, none];
  if (type === 3) {
    const rest = counts.map((each, sample) => stored.slice(4).reduce((left, sensor) => left - sensor[sample]!, each));
    stored.push(rest);
  }
  return stored.map((own, input): WrittenChannel => {
    const perCount = type === 4 ? newtonsPerCount / calibration[input]! : newtonsPerCount;
    return { label: names[input] ?? "", unit: type === 4 ? "V" : unit, scale: sign * perCount, stored: own };
  });
}

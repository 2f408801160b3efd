import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { countOfParameter, dimensionsOf, numbersOf } from "../../bytes/c3d/parameter-values.ts";
import type { Vector } from "./vector.ts";

/** One force platform as the file describes it. */
export interface ForcePlatform {
  /** From 1. */
  readonly number: number;
  /** "force platform 1". */
  readonly name: string;
  /** As the C3D guide numbers them; undefined where the file gives none. */
  readonly type: number | undefined;
  /** Analog channels from 1, in the order of the type's inputs. */
  readonly channels: readonly number[];
  /** Four corners of the working surface in the laboratory; empty where the file gives none. */
  readonly corners: readonly Vector[];
  /** From the origin of the plate to the middle of its surface, or distances of its sensors; empty where none is given. */
  readonly origin: readonly number[];
  /** The 6 by 6 calibration matrix by columns, for type 4; empty where the file gives none. */
  readonly calibration: readonly number[];
  /** A clause that says why its forces cannot be read: "it is of type 21"; absent where they can. */
  readonly problem?: string;
}

/** Analog channels of each type that can be read. */
const inputsOfType: ReadonlyMap<number, number> = new Map([
  [1, 6],
  [2, 6],
  [3, 8],
  [4, 6],
]);

/** No setting: the format says so. */
const fewestInputs = 6;

/** No setting: the format says so. */
const calibrationValues = 36;

/** The platforms a file says it uses, in its order; those that cannot be read say why. */
export function readForcePlatforms(file: C3dFile): readonly ForcePlatform[] {
  const { parameters } = file;
  const numbers = (name: string, sign: "signed" | "unsigned"): readonly number[] =>
    numbersOf(parameters, `FORCE_PLATFORM:${name}`, sign) ?? [];
  const types = numbers("TYPE", "unsigned");
  const channels = numbers("CHANNEL", "unsigned");
  const corners = numbers("CORNERS", "signed");
  const origins = numbers("ORIGIN", "signed");
  const calibrations = numbers("CAL_MATRIX", "signed");
  const [channelRows = channels.length] = dimensionsOf(parameters, "FORCE_PLATFORM:CHANNEL");
  // A damaged count does not make platforms that nothing else in the file describes.
  const described = Math.max(types.length, channelRows === 0 ? 0 : Math.ceil(channels.length / channelRows));
  const used = Math.min(statedPlatforms(file), described + 1, Math.floor(file.layout.channelCount / fewestInputs) + 1);
  return Array.from({ length: used }, (_, index): ForcePlatform => {
    const type = types[index];
    const needed = inputsOfType.get(type ?? 0) ?? 0;
    const ownChannels = channels.slice(index * channelRows, (index + 1) * channelRows);
    const platform = {
      number: index + 1,
      name: `force platform ${index + 1}`,
      type,
      channels: needed === 0 ? ownChannels : ownChannels.slice(0, needed),
      corners: cornersOf(corners.slice(12 * index, 12 * (index + 1))),
      origin: origins.slice(3 * index, 3 * (index + 1)),
      calibration: type === 4 ? calibrationOf(calibrations, index) : [],
    };
    const problem = problemOf(platform, needed, file);
    return problem === undefined ? platform : { ...platform, problem };
  });
}

/** The number of platforms as the file states it; 0 where it states none. */
export function statedPlatforms({ parameters }: C3dFile): number {
  return countOfParameter(parameters, "FORCE_PLATFORM:USED") ?? 0;
}

/** A matrix of nothing but zeros was never filled in. */
function calibrationOf(all: readonly number[], index: number): readonly number[] {
  const own = all.slice(calibrationValues * index, calibrationValues * (index + 1));
  return own.every((value) => value === 0) ? [] : own;
}

function cornersOf(values: readonly number[]): Vector[] {
  if (values.length < 12 || !values.every(Number.isFinite)) return [];
  return [0, 3, 6, 9].map((at) => [values[at]!, values[at + 1]!, values[at + 2]!]);
}

function problemOf(platform: Omit<ForcePlatform, "problem">, needed: number, file: C3dFile): string | undefined {
  const { type, channels, calibration } = platform;
  if (type === undefined) return "the file gives it no type";
  if (needed === 0) return `it is of type ${type}, and only types 1 to 4 can be read`;
  if (channels.length < needed)
    return `a platform of type ${type} has ${needed} channels, and ${channels.length} are given`;
  const wrong = channels.find(
    (channel) => !(Number.isInteger(channel) && channel >= 1 && channel <= file.layout.channelCount),
  );
  if (wrong !== undefined) return `it uses channel ${wrong}, and the file has ${file.layout.channelCount}`;
  const unscaled = channels.find((channel) => !isScaled(file, channel));
  if (unscaled !== undefined) return `scale or offset of its channel ${unscaled} is no number`;
  if (calibration.length > 0 && (calibration.length < calibrationValues || !calibration.every(Number.isFinite))) {
    return "its calibration matrix is not whole";
  }
  return undefined;
}

function isScaled({ channels, generalScale }: C3dFile, channel: number): boolean {
  const { scale = Number.NaN, offset = Number.NaN } = channels[channel - 1] ?? {};
  return Number.isFinite(scale * generalScale) && Number.isFinite(offset);
}

import { countOf } from "../../ground/plain-words.ts";
import type { C3dReading, PlatformReading } from "./c3d-reading.ts";

/** What a C3D file holds, in lines to read where a text file shows its first lines. */
export function c3dLines(reading: C3dReading): readonly string[] {
  const { channels, platforms, hints, upwardAxis } = reading;
  const rate = (rateHz: number | undefined): string => (rateHz === undefined ? "an unknown rate" : `${rateHz} Hz`);
  return [
    `C3D, ${c3dFormWords(reading)}`,
    `${countOf(reading.frames, "frame")} at ${rate(reading.frameRateHz)} with ${countOf(reading.points, "point")}`,
    `${countOf(channels.length, "analog channel")} at ${rate(reading.analogRateHz)}`,
    ...platforms.map(platformLine),
    ...(upwardAxis === undefined ? [] : [`upwards is ${upwardAxis} of the laboratory`]),
    ...hints.map(({ name, value }) => `${name}: ${value}`),
    ...channels.map(
      ({ number, label, unit, scale, offset }) =>
        `channel ${number}: ${label === "" ? "no label" : label}, ${unit === "" ? "no unit" : unit}, scale ${scale}, offset ${offset}`,
    ),
  ];
}

/** "Intel byte order, integers". */
export function c3dFormWords({ byteOrder, dataType }: C3dReading): string {
  return `${byteOrder} byte order, ${dataType === "integer" ? "integers" : "floating-point numbers"}`;
}

function platformLine({ name, type, channels, tiltDegrees, problem }: PlatformReading): string {
  const parts = [
    name,
    type === undefined ? "no type" : `type ${type}`,
    `channels ${channels.join(" ")}`,
    ...(tiltDegrees === undefined ? [] : [`tilted by ${tiltDegrees.toFixed(1)} degrees`]),
    ...(problem === undefined ? [] : ["cannot be read"]),
  ];
  return parts.join(", ");
}

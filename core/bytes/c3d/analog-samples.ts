import type { C3dFile } from "./c3d-file.ts";
import { dataStartOf, frameBytesOf } from "./frame-layout.ts";

/** Analog samples of each channel. */
export function sampleCountOf({ layout }: C3dFile): number {
  return layout.channelCount === 0 ? 0 : layout.frames * layout.samplesPerFrame;
}

/**
 * The values of one channel, scaled: (stored − offset) × scale × general scale, for integers and floating-point alike.
 * @param channelNumber from 1
 */
export function channelValues(file: C3dFile, channelNumber: number): Float64Array {
  const { scale, offset } = file.channels[channelNumber - 1]!;
  const factor = scale * file.generalScale;
  const values = storedValues(file, channelNumber);
  // Adding zero takes the sign off a zero that a negative scale has made.
  for (let index = 0; index < values.length; index++) values[index] = (values[index]! - offset) * factor + 0;
  return values;
}

/**
 * The values of one channel as they are stored.
 * @param channelNumber from 1
 */
export function storedValues(file: C3dFile, channelNumber: number): Float64Array {
  const { words, layout, isUnsigned } = file;
  const { points, channelCount, samplesPerFrame, dataType, frames } = layout;
  const valueBytes = dataType === "float" ? 4 : 2;
  const read = dataType === "float" ? words.float32 : isUnsigned ? words.unsigned16 : words.signed16;
  const frameBytes = frameBytesOf(layout);
  const values = new Float64Array(sampleCountOf(file));
  const first = dataStartOf(layout) + (4 * points + channelNumber - 1) * valueBytes;
  let index = 0;
  for (let frame = 0; frame < frames; frame++) {
    let at = first + frame * frameBytes;
    for (let sample = 0; sample < samplesPerFrame; sample++, at += channelCount * valueBytes)
      values[index++] = read(at);
  }
  return values;
}

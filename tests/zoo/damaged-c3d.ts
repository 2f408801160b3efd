import { isDeepStrictEqual } from "node:util";
import { channelValues } from "../../core/bytes/c3d/analog-samples.ts";
import { dataStartOf, frameBytesOf } from "../../core/bytes/c3d/frame-layout.ts";
import { readC3d } from "../../core/bytes/c3d/read-c3d.ts";
import type { Finding } from "../../core/ground/finding.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";
import { type Flip, flipped } from "./damage-places.ts";
import type { Damage } from "./damaged-tables.ts";
import { readBytes } from "./read-zoo.ts";

/** A C3D file, unharmed. */
export interface WholeC3d {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly answers: LayoutAnswers;
  readonly reading: C3dReading;
  /** First byte of the data, and the byte behind the last stated frame. */
  readonly dataStart: number;
  readonly statedEnd: number;
}

interface C3dReading {
  readonly samples: readonly Float64Array[];
  readonly recording: unknown;
  readonly understood: unknown;
  readonly findings: readonly Finding[];
}

/** Reads an unharmed file; undefined where it is no C3D file that can be opened. */
export function wholeC3d(name: string, bytes: Uint8Array, answers: LayoutAnswers): WholeC3d | undefined {
  const { file } = readC3d(bytes);
  if (file === undefined) return undefined;
  const dataStart = dataStartOf(file.layout);
  const statedEnd = dataStart + file.layout.statedFrames * frameBytesOf(file.layout);
  return { name, bytes, answers, reading: readAll(name, bytes, answers), dataStart, statedEnd };
}

function readAll(name: string, bytes: Uint8Array, answers: LayoutAnswers): C3dReading {
  const { read, inspection } = readBytes(name, bytes, answers);
  const { recording, findings, reading } = read;
  if (inspection.kind !== "c3d") return { samples: [], recording, findings, understood: inspection };
  const { file } = readC3d(bytes);
  const { channels, platforms, ...others } = inspection;
  return {
    samples: file === undefined ? [] : file.channels.map(({ number }) => channelValues(file, number)),
    recording,
    findings,
    understood: {
      others,
      reading,
      channels: channels.map(
        ({ minimum: _least, maximum: _most, mean: _mean, values: _values, unreadable: _unreadable, ...rest }) => rest,
      ),
      platforms: platforms.map(({ stored: _stored, upwardNewtons: _upward, ...rest }) => rest),
    },
  };
}

function saysMore(whole: readonly Finding[], harmed: readonly Finding[]): boolean {
  return harmed.some((finding) => !whole.some((each) => isDeepStrictEqual(each, finding)));
}

/** Cuts a file and looks whether the reading says so: a C3D file states its length. */
export function cutC3d(whole: WholeC3d, length: number): Damage {
  const { findings } = readBytes(whole.name, whole.bytes.subarray(0, length), whole.answers).read;
  if (saysMore(whole.reading.findings, findings)) return "found";
  return length < whole.statedEnd ? { complaint: "fewer frames than stated were not found" } : "same";
}

/** Flips a byte of a file and looks whether the reading says so, is the same, or differs in one sample alone. */
export function flipC3d(whole: WholeC3d, flip: Flip): Damage {
  const { reading: before, dataStart } = whole;
  const after = readAll(whole.name, flipped(whole.bytes, flip), whole.answers);
  if (saysMore(before.findings, after.findings)) return "found";
  const isSameReading = isDeepStrictEqual(after.understood, before.understood);
  if (!isSameReading) {
    return flip.place < dataStart
      ? "shown in the header"
      : { complaint: "a flip in the data changed what was understood" };
  }
  const isSame =
    isDeepStrictEqual(after.samples, before.samples) && isDeepStrictEqual(after.recording, before.recording);
  if (isSame) return "same";
  if (flip.place < dataStart) return { complaint: "the values differ and nothing shows it" };
  let different = 0;
  for (const [index, samples] of before.samples.entries()) {
    const others = after.samples[index]!;
    for (const [row, value] of samples.entries()) if (!Object.is(value, others[row])) different++;
  }
  return different <= 1 ? "one value" : { complaint: `${different} samples differ` };
}

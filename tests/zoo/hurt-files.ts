import { zooFiles } from "../../build/zoo/zoo-files.ts";
import { c3dSamples } from "../core/bytes/c3d/c3d-samples.ts";
import { cutsOf, type Flip, flipped, flipsOf } from "./damage-places.ts";
import { cutC3d, flipC3d, wholeC3d } from "./damaged-c3d.ts";
import { cutTable, type Damage, flipTable, wholeTable } from "./damaged-tables.ts";
import { readBytes } from "./read-zoo.ts";

/** A file that can be harmed, whatever it holds. */
export interface HurtFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Bytes before the rows or the data. */
  readonly headerBytes: number;
  readonly cut: (length: number) => Damage;
  readonly flip: (flip: Flip) => Damage;
}

/** The files of the zoo and the public C3D samples, where they lie beside the project. */
export function hurtFiles(): readonly HurtFile[] {
  const samples = c3dSamples().map(({ name, bytes }) => {
    // More than two loaded platforms leave open which foot stood where.
    const answers = name === "TYPE-3.c3d" ? { left: 1, right: 2 } : {};
    return { name, bytes, answers, statesCount: true };
  });
  const zoo = zooFiles().map(({ name, bytes, expected }) => {
    return { name, bytes, answers: expected.answers ?? {}, statesCount: expected.statesCount };
  });
  return [...zoo, ...samples].map(({ name, bytes, answers, statesCount }): HurtFile => {
    const c3d = wholeC3d(name, bytes, answers);
    if (c3d !== undefined) {
      const { dataStart: headerBytes } = c3d;
      return { name, bytes, headerBytes, cut: (length) => cutC3d(c3d, length), flip: (flip) => flipC3d(c3d, flip) };
    }
    const table = wholeTable(name, bytes, answers, statesCount);
    if (table !== undefined) {
      const headerBytes = table.places.start;
      return {
        name,
        bytes,
        headerBytes,
        cut: (length) => cutTable(table, length),
        flip: (flip) => flipTable(table, flip),
      };
    }
    const refuse = (harmed: Uint8Array): Damage => {
      const { recording } = readBytes(name, harmed).read;
      return recording === undefined ? "found" : { complaint: "a file that is no recording was read as one" };
    };
    return {
      name,
      bytes,
      headerBytes: 0,
      cut: (length) => refuse(bytes.subarray(0, length)),
      flip: (flip) => refuse(flipped(bytes, flip)),
    };
  });
}

/** How often a file is hurt. */
interface Wounds {
  readonly cuts: number;
  /** Flipped bytes anywhere, and more of them before the rows or the data. */
  readonly flips: number;
  readonly flipsInHeader: number;
}

/** Hurts a file at as many places as wanted; each place with what became of it. */
export function* hurt(
  file: HurtFile,
  { cuts, flips, flipsInHeader }: Wounds,
): Generator<{ readonly kind: "cut" | "flip"; readonly place: string; readonly run: () => Damage }> {
  for (const length of cutsOf(file.name, cuts, file.bytes.length)) {
    yield { kind: "cut", place: `cut at ${length}`, run: () => file.cut(length) };
  }
  const everyFlip = [
    ...flipsOf(file.name, flips, file.bytes.length),
    ...flipsOf(file.name, flipsInHeader, file.headerBytes),
  ];
  for (const flip of everyFlip) {
    yield { kind: "flip", place: `byte ${flip.place}, mask ${flip.mask}`, run: () => file.flip(flip) };
  }
}

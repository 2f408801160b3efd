import type { ByteOrder } from "../../../../core/bytes/c3d/words.ts";

/** One parameter as it is written; `next` and `typeCode` stand in for damaged records. */
export interface WrittenParameter {
  readonly type: "text" | "byte" | "integer" | "float";
  readonly dimensions: readonly number[];
  readonly values: readonly number[] | string;
  readonly isLocked?: boolean;
  readonly description?: string;
  /** Pointer to the next record, in place of the true one. */
  readonly next?: number;
  readonly typeCode?: number;
}

/** A C3D file as it is to be written. */
export interface WrittenC3d {
  readonly byteOrder: ByteOrder;
  readonly dataType: "integer" | "float";
  readonly points: number;
  readonly frames: number;
  readonly samplesPerFrame: number;
  readonly frameRateHz: number;
  /** Stored values, one list a channel. */
  readonly stored: readonly (readonly number[])[];
  /** "GROUP:NAME" and its parameter, in the order in which they are written. */
  readonly parameters: ReadonlyMap<string, WrittenParameter>;
  /** Header words in place of the true ones, by number from 1; words 7 and 11 are floating-point. */
  readonly headerWords?: ReadonlyMap<number, number>;
  /** True: every group stands behind all parameters. */
  readonly groupsLast?: boolean;
  readonly parameterBlock?: number;
  readonly firstFrame?: number;
}

export function texts(list: readonly string[]): WrittenParameter {
  const length = Math.max(1, ...list.map((each) => each.length));
  return {
    type: "text",
    dimensions: [length, list.length],
    values: list.map((each) => each.padEnd(length)).join(""),
  };
}

export function integers(values: readonly number[], dimensions: readonly number[] = [values.length]): WrittenParameter {
  return { type: "integer", dimensions, values };
}

export function floats(values: readonly number[], dimensions: readonly number[] = [values.length]): WrittenParameter {
  return { type: "float", dimensions, values };
}

export function integer(value: number): WrittenParameter {
  return integers([value], []);
}

export function float(value: number): WrittenParameter {
  return floats([value], []);
}

const processors: Readonly<Record<ByteOrder, number>> = { Intel: 84, DEC: 85, SGI: 86 };
const typeCodes = { text: -1, byte: 1, integer: 2, float: 4 } as const;

/** A growing list of bytes in one byte order. */
function byteWriter(byteOrder: ByteOrder) {
  const bytes: number[] = [];
  const scratch = new DataView(new ArrayBuffer(4));
  const writer = {
    bytes,
    byte: (value: number) => bytes.push(value & 255),
    word: (value: number) => {
      const low = value & 255;
      const high = (value >> 8) & 255;
      bytes.push(...(byteOrder === "SGI" ? [high, low] : [low, high]));
    },
    float: (value: number) => {
      // A VAX number is the IEEE number of four times the value with its words exchanged (C3D notes, §1).
      scratch.setFloat32(0, byteOrder === "DEC" ? 4 * value : value);
      const [a, b, c, d] = [0, 1, 2, 3].map((at) => scratch.getUint8(at)) as [number, number, number, number];
      bytes.push(...(byteOrder === "SGI" ? [a, b, c, d] : byteOrder === "DEC" ? [b, a, d, c] : [d, c, b, a]));
    },
    text: (text: string) => bytes.push(...[...text].map((letter) => letter.charCodeAt(0))),
  };
  return writer;
}

/** Writes a C3D file. */
export function writeC3d(file: WrittenC3d): Uint8Array {
  const section = writeParameters(file);
  const parameterBlock = file.parameterBlock ?? 2;
  const blocks = Math.ceil(section.length / 512);
  section[2] = blocks;
  const dataBlock = parameterBlock + blocks;
  const header = writeHeader(file, parameterBlock, dataBlock);
  const data = writeData(file);
  const length = (dataBlock - 1) * 512 + Math.ceil(data.length / 512) * 512;
  const bytes = new Uint8Array(length);
  bytes.set(header);
  bytes.set(section, (parameterBlock - 1) * 512);
  bytes.set(data, (dataBlock - 1) * 512);
  return bytes;
}

function writeHeader(file: WrittenC3d, parameterBlock: number, dataBlock: number): number[] {
  const writer = byteWriter(file.byteOrder);
  const word = (number: number, value: number): void => {
    writer.word(file.headerWords?.get(number) ?? value);
  };
  const firstFrame = file.firstFrame ?? 1;
  writer.byte(parameterBlock);
  writer.byte(0x50);
  word(2, file.points);
  word(3, file.stored.length * file.samplesPerFrame);
  word(4, firstFrame);
  word(5, Math.min(65535, firstFrame + file.frames - 1));
  word(6, 0);
  writer.float(file.headerWords?.get(7) ?? (file.dataType === "float" ? -0.1 : 0.1));
  word(9, dataBlock);
  word(10, file.samplesPerFrame);
  writer.float(file.headerWords?.get(11) ?? file.frameRateHz);
  return writer.bytes;
}

function writeParameters(file: WrittenC3d): number[] {
  const writer = byteWriter(file.byteOrder);
  for (const byte of [1, 0x50, 0, processors[file.byteOrder]]) writer.byte(byte);
  const groups = [...new Set([...file.parameters.keys()].map((key) => key.split(":")[0]!))];
  const writeGroup = (name: string): void => {
    writer.byte(name.length);
    writer.byte(-(groups.indexOf(name) + 1));
    writer.text(name);
    writer.word(3);
    writer.byte(0);
  };
  if (file.groupsLast !== true) groups.forEach(writeGroup);
  for (const [key, parameter] of file.parameters) {
    const [group = "", name = ""] = key.split(":");
    const { type, dimensions, values, description = "" } = parameter;
    const content = byteWriter(file.byteOrder);
    content.byte(parameter.typeCode ?? typeCodes[type]);
    content.byte(dimensions.length);
    for (const dimension of dimensions) content.byte(dimension);
    if (typeof values === "string") content.text(values);
    else {
      for (const value of values) {
        if (type === "float") content.float(value);
        else if (type === "integer") content.word(value);
        else content.byte(value);
      }
    }
    content.byte(description.length);
    content.text(description);
    writer.byte(parameter.isLocked === true ? -name.length : name.length);
    writer.byte(groups.indexOf(group) + 1);
    writer.text(name);
    writer.word(parameter.next ?? content.bytes.length + 2);
    writer.bytes.push(...content.bytes);
  }
  if (file.groupsLast === true) groups.forEach(writeGroup);
  writer.byte(0);
  return writer.bytes;
}

function writeData(file: WrittenC3d): Uint8Array {
  const writer = byteWriter(file.byteOrder);
  const value = file.dataType === "float" ? writer.float : writer.word;
  for (let frame = 0; frame < file.frames; frame++) {
    for (let point = 0; point < 4 * file.points; point++) value(point + frame);
    for (let sample = 0; sample < file.samplesPerFrame; sample++) {
      for (const channel of file.stored) value(channel[frame * file.samplesPerFrame + sample] ?? 0);
    }
  }
  return Uint8Array.from(writer.bytes);
}

import type { Words } from "./words.ts";

/** One parameter: where its data lie and in what form. */
export interface Parameter {
  readonly type: "text" | "byte" | "integer" | "float";
  /** First index fastest; empty for a single value. */
  readonly dimensions: readonly number[];
  /** First byte of the data. */
  readonly at: number;
  readonly count: number;
}

/** Something in the parameter section that is not as it should be. */
export interface ParameterDefect {
  /** Byte of the file. */
  readonly at: number;
  readonly what: string;
}

/** The parameter section as "GROUP:NAME", in capitals. */
export interface Parameters {
  readonly words: Words;
  readonly entries: ReadonlyMap<string, Parameter>;
  readonly defects: readonly ParameterDefect[];
  /** True where reading stopped because a record left the section. */
  readonly leavesSection: boolean;
}

const typesByCode: ReadonlyMap<number, Parameter["type"]> = new Map([
  [-1, "text"],
  [1, "byte"],
  [2, "integer"],
  [4, "float"],
]);

const bytesOfType: Readonly<Record<Parameter["type"], number>> = { text: 1, byte: 1, integer: 2, float: 4 };

/** No setting: the format says so. */
const mostDimensions = 7;

/**
 * Far more records than any file has; a damaged pointer may make a chain of tiny ones through a whole file. No
 * setting: it guards the memory.
 */
const mostRecords = 10_000;

/**
 * Reads the records of a parameter section. Each record's own pointer to the next is believed, whatever its contents
 * are; where it leads out of the section, or contents run out of it, reading stops or passes on and a defect is kept.
 * @param start first byte of the section
 * @param limit byte behind the section
 */
export function readParameters(words: Words, start: number, limit: number): Parameters {
  const groups = new Map<number, string>();
  const found: { readonly group: number; readonly name: string; readonly parameter: Parameter; readonly at: number }[] =
    [];
  const defects: ParameterDefect[] = [];
  let leavesSection = false;
  let at = start + 4;
  for (let record = 0; at + 2 <= limit; record++) {
    if (record === mostRecords) {
      defects.push({ at, what: `more than ${mostRecords} records stand in it` });
      break;
    }
    const nameLength = Math.abs(words.signed8(at));
    if (nameLength === 0) break;
    const number = words.signed8(at + 1);
    const pointerAt = at + 2 + nameLength;
    if (pointerAt + 3 > limit) {
      defects.push({ at, what: "a record runs out of the section" });
      leavesSection = true;
      break;
    }
    const name = textAt(words, at + 2, nameLength).toUpperCase();
    if (!/^[\x21-\x7e]+$/.test(name)) defects.push({ at, what: "a name holds characters that no name has" });
    let end: number | undefined;
    if (number < 0) {
      if (groups.has(-number)) defects.push({ at, what: `two groups have the number ${-number}` });
      else groups.set(-number, name);
      end = pointerAt + 3 + words.bytes[pointerAt + 2]!;
    } else {
      const parameter = number === 0 ? "it belongs to no group" : readParameter(words, pointerAt + 2, limit);
      if (typeof parameter === "string") defects.push({ at, what: `${name} cannot be read: ${parameter}` });
      else {
        found.push({ group: number, name, parameter, at });
        const descriptionAt = parameter.at + parameter.count * bytesOfType[parameter.type];
        end = descriptionAt < limit ? descriptionAt + 1 + words.bytes[descriptionAt]! : descriptionAt;
      }
    }
    const pointer = words.unsigned16(pointerAt);
    if (pointer === 0) break;
    const next = pointerAt + pointer;
    if (next > limit) {
      defects.push({ at, what: `${name} points to a next record outside the section` });
      leavesSection = true;
      break;
    }
    if (end !== undefined && next !== end) {
      defects.push({ at, what: `${name} takes ${end - pointerAt} bytes, but the next record stands after ${pointer}` });
    }
    at = next;
  }
  const entries = new Map<string, Parameter>();
  for (const { group, name, parameter, at: place } of found) {
    const groupName = groups.get(group);
    const key = `${groupName}:${name}`;
    if (groupName === undefined)
      defects.push({ at: place, what: `${name} belongs to group ${group}, which is missing` });
    else if (entries.has(key)) defects.push({ at: place, what: `${key} stands there twice; the first one counts` });
    else entries.set(key, parameter);
  }
  return { words, entries, defects, leavesSection };
}

/** A parameter from its type byte on, or a clause that says why it cannot be read. */
function readParameter(words: Words, at: number, limit: number): Parameter | string {
  if (at + 2 > limit) return "it runs out of the section";
  const code = words.signed8(at);
  const type = typesByCode.get(code);
  if (type === undefined) return `its type ${code} does not exist`;
  const dimensionCount = words.bytes[at + 1]!;
  if (dimensionCount > mostDimensions) return `it states ${dimensionCount} dimensions`;
  const dataAt = at + 2 + dimensionCount;
  if (dataAt > limit) return "it runs out of the section";
  const dimensions = [...words.bytes.subarray(at + 2, dataAt)];
  const count = dimensions.reduce((product, dimension) => product * dimension, 1);
  if (dataAt + count * bytesOfType[type] > limit) return `its ${count} values run out of the section`;
  return { type, dimensions, at: dataAt, count };
}

/** Bytes as characters of the same number; what is not ASCII stays one character a byte. */
export function textAt(words: Words, at: number, length: number): string {
  let text = "";
  for (const byte of words.bytes.subarray(at, at + length)) text += String.fromCharCode(byte);
  return text;
}

import { type Parameter, type Parameters, textAt } from "./parameters.ts";

/** The numbers of a parameter; undefined where it is missing or holds text. Integers are read with or without sign. */
export function numbersOf(
  parameters: Parameters,
  key: string,
  sign: "signed" | "unsigned",
): readonly number[] | undefined {
  const parameter = parameters.entries.get(key);
  if (parameter === undefined || parameter.type === "text") return undefined;
  const { words } = parameters;
  const { type, at, count } = parameter;
  const value = (index: number): number => {
    if (type === "float") return words.float32(at + 4 * index);
    if (type === "byte") return sign === "signed" ? words.signed8(at + index) : words.bytes[at + index]!;
    return sign === "signed" ? words.signed16(at + 2 * index) : words.unsigned16(at + 2 * index);
  };
  return Array.from({ length: count }, (_, index) => value(index));
}

/** The first number of a parameter; undefined where there is none. */
export function numberOf(parameters: Parameters, key: string, sign: "signed" | "unsigned"): number | undefined {
  return numbersOf(parameters, key, sign)?.[0];
}

/** A count, as a whole number without sign; undefined where none is stated. */
export function countOfParameter(parameters: Parameters, key: string): number | undefined {
  const value = numberOf(parameters, key, "unsigned");
  return value !== undefined && Number.isFinite(value) && value >= 0 ? Math.round(value) : undefined;
}

/** A whole number of 32 bits written as two of 16, the low one first (TRIAL:ACTUAL_START_FIELD). */
export function wideNumberOf(parameters: Parameters, key: string): number | undefined {
  const [low, high = 0] = numbersOf(parameters, key, "unsigned") ?? [];
  if (low === undefined || !Number.isFinite(low) || low < 0) return undefined;
  return parameters.entries.get(key)?.type === "integer" ? low + 65536 * high : low;
}

/** The texts of a parameter, without the blanks and zeros around them; undefined where it is missing or holds numbers. */
export function textsOf(parameters: Parameters, key: string): readonly string[] | undefined {
  const parameter = parameters.entries.get(key);
  if (parameter === undefined || parameter.type !== "text") return undefined;
  const [length = 1] = parameter.dimensions;
  const count = parameter.dimensions.slice(1).reduce((product, dimension) => product * dimension, 1);
  return Array.from({ length: count }, (_, index) =>
    textAt(parameters.words, parameter.at + index * length, length).replace(/^[\0\s]+|[\0\s]+$/g, ""),
  );
}

/** A list that goes on under numbered names where one parameter is too short: LABELS, LABELS2, LABELS3 … */
export function continuedList<Value>(
  read: (key: string) => readonly Value[] | undefined,
  key: string,
): readonly Value[] | undefined {
  const first = read(key);
  if (first === undefined) return undefined;
  const all = [...first];
  for (let part = 2; ; part++) {
    const next = read(`${key}${part}`);
    if (next === undefined) return all;
    for (const value of next) all.push(value);
  }
}

/** The dimensions of a parameter, empty where it is missing. */
export function dimensionsOf(parameters: Parameters, key: string): readonly number[] {
  const parameter: Parameter | undefined = parameters.entries.get(key);
  return parameter?.dimensions ?? [];
}

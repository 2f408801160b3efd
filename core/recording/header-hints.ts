import type { DecimalMark } from "../bytes/number-text.ts";
import type { Settings } from "../settings/settings.ts";
import { foldWord } from "./column-words.ts";
import { forceUnitOf } from "./force-units.ts";
import type { HeaderField } from "./header-fields.ts";
import type { HeaderHint, HeaderHintKind } from "./header-hint.ts";
import { readQuantity } from "./header-numbers.ts";
import { keyMeaning, speaksOfSampling, unitInKey } from "./header-words.ts";
import { limbIn, testIn } from "./named-in-words.ts";
import { secondsIn, timeUnitOf } from "./time-units.ts";

type Said = Pick<HeaderHint, "kind" | "value" | "numberWithoutUnit" | "unit">;

/** What the lines above the column names say about the recording, in order of lines. */
export function readHeaderHints(
  fields: readonly HeaderField[],
  decimalMark: DecimalMark,
  settings: Settings,
): HeaderHint[] {
  const proseLines = new Set<number>();
  return fields.flatMap((field) => {
    const { line, written } = field;
    let said: Said | undefined;
    if (field.key !== "" && keyMeaning(field.key) !== undefined) said = readPair(field, decimalMark, settings);
    else if (!proseLines.has(line)) {
      // A line that is no known fact may still say its rate ("1000 samples a second, newtons").
      proseLines.add(line);
      said = readProse(field.key === "" ? field.value : written, decimalMark);
    }
    const limb = said?.kind === "test" ? limbIn(field.value) : undefined;
    const also: Said[] = limb === undefined ? [] : [{ kind: "side", value: limb, unit: "" }];
    return said === undefined ? [] : [said, ...also].map((each) => ({ ...each, line, written }));
  });
}

function readPair({ key, value }: HeaderField, decimalMark: DecimalMark, settings: Settings): Said | undefined {
  const meaning = keyMeaning(key);
  switch (meaning) {
    case undefined:
    case "other":
      return undefined;
    case "interval":
      return readInterval(key, value, decimalMark, settings);
    case "rate":
      return readNumber(meaning, "Hz", key, value, decimalMark, (unit) => hertzIn(unit));
    case "mass":
      return readNumber(meaning, "kg", key, value, decimalMark, (unit) => kilogramsIn.get(foldWord(unit)));
    case "dropHeight":
      return readNumber(meaning, "m", key, value, decimalMark, (unit) => metresIn.get(foldWord(unit)));
    case "samples": {
      const count = readQuantity(value, decimalMark)?.number;
      return count !== undefined && Number.isInteger(count) && count > 0
        ? { kind: meaning, value: count, unit: "1" }
        : undefined;
    }
    case "unit": {
      const units = new Set(value.split(/[\s,;/|]+/).flatMap((word) => forceUnitOf(word) ?? []));
      const [unit] = units;
      return unit !== undefined && units.size === 1 ? { kind: meaning, value: unit, unit: "" } : undefined;
    }
    case "date":
      return { kind: meaning, ...present(isoDateOf(value)), unit: "" };
    case "side":
      return withWord(meaning, limbIn(value));
    case "test":
      return withWord(meaning, testIn(value));
    case "athlete":
      return { kind: meaning, value, unit: "" };
  }
}

function withWord(kind: HeaderHintKind, word: string | undefined): Said {
  return { kind, ...present(word), unit: "" };
}

function present(value: string | undefined): { readonly value?: string } {
  return value === undefined ? {} : { value };
}

const kilogramsIn: ReadonlyMap<string, number> = new Map([
  ...["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramm", "kilogrammes"].map(
    (word) => [word, 1] as const,
  ),
  ["g", 1e-3],
  ...["lb", "lbs"].map((word) => [word, 0.45359237] as const),
]);
const metresIn: ReadonlyMap<string, number> = new Map([
  ...["m", "metre", "metres", "meter", "meters"].map((word) => [word, 1] as const),
  ["cm", 0.01],
  ["mm", 0.001],
  ...["in", "inch", "inches"].map((word) => [word, 0.0254] as const),
]);

/** "Hz", "1/s", "samples a second", "échantillons par seconde". */
const counted = "samples?|frames?|points?|(?:abtast)?werte|échantillons?|muestras?|campioni";
const aSecond = "(?:\\/|per|a|pro|par|por|al)\\s*(?:s|secs?|seconds?|sekunde|secondes?|segundos?|secondo)";
const hertzWords = `k?hz|k?hertz|sps|(?:${counted})\\s*${aSecond}`;
const isHertz = new RegExp(`^(?:${hertzWords}|1\\/s|s-1|s\\^-1|s⁻¹|s\\/s|${aSecond})(?!\\p{L})`, "iu");
const numberOfHertz = new RegExp(
  `(?<![\\p{L}\\d.,])(?:\\d[\\d.,]*(?:[ \\u00a0]\\d{3})*)\\s*(?:${hertzWords})(?!\\p{L})`,
  "giu",
);

function hertzIn(unit: string): number | undefined {
  if (!isHertz.test(unit)) return undefined;
  return /^k(?:hz|hertz)/i.test(unit) ? 1000 : 1;
}

function readNumber(
  kind: HeaderHintKind,
  unit: "Hz" | "kg" | "m",
  key: string,
  value: string,
  decimalMark: DecimalMark,
  factorOf: (unit: string) => number | undefined,
): Said | undefined {
  const quantity = readQuantity(value, decimalMark);
  if (quantity === undefined) return undefined;
  const written = quantity.unit === "" ? unitInKey(key) : quantity.unit;
  const factor = factorOf(written);
  // A mass has three decimals now and then; a rate has none, and a thousandfold one is believed as little.
  if (kind === "rate" && quantity.mayBeThousands) return { kind, unit };
  if (factor !== undefined) return { kind, value: Number((quantity.number * factor).toPrecision(12)), unit };
  return written === "" ? { kind, numberWithoutUnit: quantity.number, unit } : undefined;
}

/** A step between samples, as the rate it makes. */
function readInterval(key: string, value: string, decimalMark: DecimalMark, settings: Settings): Said | undefined {
  const quantity = readQuantity(value, decimalMark);
  const unit = quantity && timeUnitOf(quantity.unit === "" ? unitInKey(key) : quantity.unit);
  if (quantity === undefined || unit === undefined) return undefined;
  const seconds = quantity.number * secondsIn[unit];
  if (!(seconds > 0 && seconds < settings.headerIntervalMostSeconds)) return undefined;
  return { kind: "rate", value: Number((1 / seconds).toPrecision(9)), unit: "Hz" };
}

/** "Sampled at 1000 Hz", or a line that is a rate and nothing else. */
function readProse(text: string, decimalMark: DecimalMark): Said | undefined {
  const found = [...text.matchAll(numberOfHertz)];
  const [only] = found;
  if (only === undefined || found.length > 1) return undefined;
  const isAlone = text.trim() === only[0].trim();
  if (!isAlone && !speaksOfSampling(text)) return undefined;
  return readNumber("rate", "Hz", "", only[0], decimalMark, (unit) => hertzIn(unit));
}

/** ISO where the date can be read in one way only. */
function isoDateOf(text: string): string | undefined {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)/.exec(text);
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})(?!\d)/.exec(text);
  const slashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})(?!\d)/.exec(text);
  if (iso !== null) return calendarDate(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  if (dotted !== null) return calendarDate(Number(dotted[3]), Number(dotted[2]), Number(dotted[1]));
  if (slashed === null) return undefined;
  const [one, other, year] = [Number(slashed[1]), Number(slashed[2]), Number(slashed[3])];
  if (one > 12) return calendarDate(year, other, one);
  return other > 12 || one === other ? calendarDate(year, one, other) : undefined;
}

function calendarDate(year: number, month: number, day: number): string | undefined {
  const lengths = [
    31,
    year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28,
    31,
    30,
    31,
    30,
    31,
    31,
    30,
    31,
    30,
    31,
  ];
  if (!(day >= 1 && day <= (lengths[month - 1] ?? 0))) return undefined;
  return `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

import { z } from "zod";
import { decimalMarks } from "../bytes/number-text.ts";
import type { SchemaType } from "../ground/schema-type.ts";
import { columnKeySchema } from "./column-key.ts";
import { forceUnits } from "./force-units.ts";

/** Samples a second, stated by a person; in hertz. */
const rateHz = z.number().positive();

/** Statements that stand before those about columns where a document is written. */
const beforeColumns = {
  /** Hertz. */
  rateHz: rateHz.exactOptional(),
  /** What the force columns are in. */
  unit: z.enum(forceUnits).exactOptional(),
  /** Decides where the marks of the numbers have two readings. */
  decimalMark: z.enum(decimalMarks).exactOptional(),
};

const columns = {
  /** "none": the file's time column is not to be used. */
  time: columnKeySchema.exactOptional(),
  left: columnKeySchema.exactOptional(),
  right: columnKeySchema.exactOptional(),
  total: columnKeySchema.exactOptional(),
};

/** Statements that stand behind those about columns. */
const behindColumns = {
  /** True when the feet stood on each other's plates: left and right are exchanged, whatever named them. */
  swapPlates: z.boolean().exactOptional(),
  /** True to put the samples on an even time base by straight lines between them; never across a gap. */
  resample: z.boolean().exactOptional(),
  /** The rate of that even time base, hertz; alone it asks for it as well. */
  resampleHz: rateHz.exactOptional(),
};

/** Which column is what. A column is a position from 1 or a name; several joined by plus signs ("2+3") are added. */
export const statedColumnsSchema = z.strictObject(columns);

/**
 * How a file is to be read, as a person says; absent parts are recognised, or asked for. A statement that is added here is
 * one of `session.json`, of every saved layout, and an answer of the screens.
 */
export const readingStatements = {
  ...beforeColumns,
  columns: statedColumnsSchema.exactOptional(),
  ...behindColumns,
};

const readingSchema = z.strictObject(readingStatements);

/** The part of what is said of a file that decides how it is read. */
export function statedAboutReading(said: ReadingStatements): ReadingStatements {
  const names = Object.keys(readingStatements) as (keyof ReadingStatements)[];
  return Object.fromEntries(names.flatMap((name) => (said[name] === undefined ? [] : [[name, said[name]]])));
}

/** What a person said once about files of a shape, its columns one by one. Keys stand in the order of writing. */
export const rememberedAnswersSchema = z.strictObject({
  ...beforeColumns,
  ...columns,
  /** True when a person stated which column is which foot (then the plates count as stated by the tester). */
  platesStated: z.boolean().exactOptional(),
  ...behindColumns,
});

type ReadingStatements = SchemaType<typeof readingSchema>;

export type RememberedAnswers = SchemaType<typeof rememberedAnswersSchema>;

/** What a person has said about one file's columns, with what a saved layout answered. */
export type LayoutAnswers = RememberedAnswers & {
  /** Body mass, for columns in body weights or newtons a kilogram. */
  readonly massKg?: number;
  /** The saved layout that gave the columns, rate or unit above. */
  readonly layout?: {
    readonly name: string;
    /** True when which foot stood where comes from the layout. */
    readonly provesPlates: boolean;
  };
};

import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { readingStatements, type statedColumnsSchema } from "../../core/recording/reading-statements.ts";
import { eventEditSchema } from "../../core/stated/event-edit.ts";
import { trialStatementsSchema } from "../../core/stated/file-entry.ts";
import { side } from "../../core/stated/schema-parts.ts";
import { sessionSchema } from "../../core/stated/session.ts";
import { file, line, reason, trial } from "./request-parts.ts";

/** What screens may change of what is stated: the entries of `session.json`, within the limits of a screen. */

/** Absent parts stay as they are; `null` takes a statement back. */
type OrTakenBack<Shape extends z.ZodRawShape> = {
  readonly [Name in keyof Shape]: z.ZodExactOptional<z.ZodNullable<Shape[Name]>>;
};

function orTakenBack<Shape extends z.ZodRawShape>(shape: Shape): OrTakenBack<Shape> {
  const parts = Object.entries(shape).map(([name, schema]) => [name, z.nullable(schema).exactOptional()]);
  return Object.fromEntries(parts) as OrTakenBack<Shape>;
}

/** Hertz. */
const rate = z.number().min(1).max(1_000_000).exactOptional();
const columnKey = z.union([z.int().min(1).max(1000), line(200).min(1)]).exactOptional();
const columns = { time: columnKey, left: columnKey, right: columnKey, total: columnKey } satisfies {
  readonly [Role in keyof typeof statedColumnsSchema.shape]: z.ZodType;
};

/** What a trial is. */
const assignment = orTakenBack(trialStatementsSchema.shape);

/** Answers to what a file could not say: everything its entry may state about it as a whole. */
export const recordingAnswersSchema = z.strictObject({
  ...assignment,
  ...orTakenBack({
    ...readingStatements,
    rateHz: rate,
    resampleHz: rate,
    /** All columns that are stated, as a whole. */
    columns: z.strictObject(columns).exactOptional(),
  }),
});

/** What the tester says the next recordings are, until something else is said. */
export const nextRecordingsSchema = trialStatementsSchema
  .pick({ test: true, limb: true, dropHeightMetres: true, leadingLeg: true })
  // Practice jumps, or nothing said of it.
  .extend({ practice: z.literal(true).exactOptional() });

/** What one row of the assignment is stated to be: a whole file, or one trial of it. */
export const assignedRowSchema = z.strictObject({ file, trial: trial.exactOptional(), ...assignment });

const eventEdits = z
  .array(
    eventEditSchema.extend({
      contactIndex: z.int().min(1).max(10_000).exactOptional(),
      time: z.number().min(0).max(86_400),
    }),
  )
  .max(200)
  .refine(
    (events) => new Set(events.map((each) => `${each.name} ${each.contactIndex ?? ""}`)).size === events.length,
    "must name each event once",
  );

/** A change to one trial; absent parts stay as they are. */
export const trialChangeSchema = z.strictObject({
  /** `null` takes an exclusion back. */
  excluded: z.strictObject({ reason }).nullable().exactOptional(),
  /** Keeps a trial in means although its weight differs, or holds it again. */
  kept: z.boolean().exactOptional(),
  seen: z.boolean().exactOptional(),
  /** The whole list of moved events; an empty list resets all to detected. */
  events: eventEdits.exactOptional(),
});

/** One decision about several trials. */
export const trialDecisionSchema = trialChangeSchema.pick({ kept: true, excluded: true });

/** Which foot stood on which column; a recording has at most four plates. */
export const statedPlates = z.array(z.strictObject({ column: line(200).min(1), foot: side })).max(4);

const { athlete, stopped } = sessionSchema.shape;

/** The parts of a session's description a screen may change. */
export const sessionChangeSchema = z.strictObject(
  orTakenBack({
    athlete: athlete
      .unwrap()
      .omit({ level: true })
      .extend({
        code: line(64).min(1),
        name: line(200).exactOptional(),
        sport: line(100).exactOptional(),
      }),
    involved: sessionSchema.shape.involved,
    injury: line(500),
    date: sessionSchema.shape.date,
    milestone: line(200),
    massKg: sessionSchema.shape.massKg,
    protocol: sessionSchema.shape.protocol,
    plates: statedPlates,
    operation: sessionSchema.shape.operation,
    stopped: stopped.unwrap().extend({ reason }),
    note: z.string().max(5000),
  }),
);

export type TrialAssignment = Pick<RecordingAnswers, keyof typeof assignment>;
export type RecordingAnswers = SchemaType<typeof recordingAnswersSchema>;
export type NextRecordings = SchemaType<typeof nextRecordingsSchema>;
export type AssignedRow = SchemaType<typeof assignedRowSchema>;
export type TrialChange = SchemaType<typeof trialChangeSchema>;
export type SessionChange = SchemaType<typeof sessionChangeSchema>;

import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { cautionNames, effusionGrades, readingMoments } from "./gate-words.ts";
import { isoDate, text } from "./schema-parts.ts";

/** The day, or day and time of day, that something is about: local, without a zone ("2026-10-13T09:40"). */
export const meantTimeSchema = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])(T([01]\d|2[0-3]):[0-5]\d)?$/);

/** The instant at which something was written down, with its zone ("2026-10-13T09:42:10+02:00"). */
export const writtenTimeSchema = z.iso.datetime({ offset: true });

const yesNo = z.enum(["yes", "no"]);

/** Answers to the cautions, as one person gave them at one time; never altered afterwards, only joined by others. */
const givenAnswersSchema = z.strictObject({
  /**
   * `session`: all questions, before it; `change`: what can have changed, before the first single-leg or drop test;
   * `response`: what became of the knee the day after the session before, in the note.
   */
  asked: z.enum(["session", "change", "response"]),
  meant: meantTimeSchema,
  written: writtenTimeSchema,
  by: text,
  answers: z.partialRecord(z.enum(cautionNames), yesNo),
  /** The surgeon's restriction, in its own words. */
  restriction: text.exactOptional(),
  note: text.exactOptional(),
});

/** A person states for a past session or an import that what was not asked is not known. */
const notKnownSchema = z.strictObject({
  notKnown: z.literal(true),
  by: text,
  written: writtenTimeSchema.exactOptional(),
  note: text.exactOptional(),
});

export const cautionAnswersSchema = z.union([givenAnswersSchema, notKnownSchema]);

export type GivenAnswers = SchemaType<typeof givenAnswersSchema>;
export type CautionAnswers = SchemaType<typeof cautionAnswersSchema>;

/** One reading of pain or effusion; readings are only ever added. */
export const kneeReadingSchema = z.strictObject({
  moment: z.enum(readingMoments),
  meant: meantTimeSchema,
  written: writtenTimeSchema,
  by: text,
  /** 0 to 10. */
  pain: z.number().min(0).max(10).exactOptional(),
  /** Where it hurts: `knee` (absent: that), of an uninjured athlete either leg; `other leg`; `elsewhere`. */
  where: z.enum(["knee", "other leg", "elsewhere"]).exactOptional(),
  /** Of the involved knee. */
  effusion: z.enum(effusionGrades).exactOptional(),
});

export type KneeReading = SchemaType<typeof kneeReadingSchema>;

/** The named treating clinician opens what is closed, with a reason; what gets worse afterwards closes again. */
export const gateOpeningSchema = z.strictObject({
  by: text,
  reason: text,
  meant: meantTimeSchema,
  written: writtenTimeSchema,
  /** Which doctor agreed, and when. */
  doctor: z.strictObject({ name: text, date: isoDate }).exactOptional(),
  /** What it opens, each as bad as it then was. */
  opens: z.array(z.strictObject({ code: text, level: z.number() })).readonly(),
});

export type GateOpening = SchemaType<typeof gateOpeningSchema>;

const week = z.int().min(0).max(104);
const earliestWeek = z.strictObject({ plain: week, repaired: week });
const landings = z.int().min(0).max(500);

/** The clinic's limits for jump testing; absent parts are the program's default. */
export const clinicLimitsSchema = z.strictObject({
  /** Who confirmed them, and when; absent while nobody has. */
  setBy: text.exactOptional(),
  setAt: isoDate.exactOptional(),
  painTwoLeg: z.number().min(0).max(10).exactOptional(),
  painSingleLegAndDrop: z.number().min(0).max(10).exactOptional(),
  effusion: z.enum(effusionGrades).exactOptional(),
  /** Weeks after the operation; `repaired`: with a repaired meniscus or cartilage, or where that is not known. */
  earliestWeeks: z
    .strictObject({
      twoLegJump: earliestWeek.exactOptional(),
      twoLegDropOrHops: earliestWeek.exactOptional(),
      singleLegJump: earliestWeek.exactOptional(),
      singleLegDrop: earliestWeek.exactOptional(),
    })
    .exactOptional(),
  landingsTwoLeg: landings.exactOptional(),
  landingsPerLeg: landings.exactOptional(),
});

export type ClinicLimits = SchemaType<typeof clinicLimitsSchema>;

/** The operation that the involved knee had, as far as it decides what may be jumped. */
export const sessionOperationSchema = z.strictObject({
  /** Absent where nobody knows it: then every jump is closed until a named clinician decides. */
  date: isoDate.exactOptional(),
  procedure: text.exactOptional(),
  graft: text.exactOptional(),
  /** Whether meniscus or cartilage was repaired; not known: the later week counts. */
  repaired: z.enum(["yes", "no", "not known"]).exactOptional(),
});

export type SessionOperation = SchemaType<typeof sessionOperationSchema>;

import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import {
  type CautionAnswers,
  cautionAnswersSchema,
  type GateOpening,
  gateOpeningSchema,
  type KneeReading,
  kneeReadingSchema,
} from "../../core/stated/cautions-schema.ts";

/** What a screen adds to the cautions of a session; the host writes down when. No Node imports: screens use the types. */

const [given, notKnown] = cautionAnswersSchema.options;
const line = z.string().min(1).max(2000);
const askedOfSession = z.enum(["session", "change"]);

export const cautionAdditionSchema = z.strictObject({
  answers: z
    .union([
      given
        .omit({ written: true })
        .extend({ asked: askedOfSession, by: line, restriction: line.exactOptional(), note: line.exactOptional() }),
      notKnown.omit({ written: true }).extend({ by: line, note: line.exactOptional() }),
    ])
    .exactOptional(),
  /** What became of the knee the day after the session before: the question and its answer. */
  response: given.pick({ meant: true }).extend({ by: line, note: line }).exactOptional(),
  readings: z
    .array(kneeReadingSchema.omit({ written: true }).extend({ by: line }))
    .max(10)
    .exactOptional(),
  opening: gateOpeningSchema.omit({ written: true }).extend({ by: line, reason: line }).exactOptional(),
});

/** Answers, readings and an opening, without the time of writing. */
export type CautionAddition = SchemaType<typeof cautionAdditionSchema>;

/** The same with the time of writing, as a session keeps it. */
export interface WrittenCautions {
  readonly answers?: readonly CautionAnswers[];
  readonly readings?: readonly KneeReading[];
  readonly opening?: GateOpening;
}

import { z } from "zod";
import { involvedSides } from "../ground/limb.ts";
import type { SchemaType } from "../ground/schema-type.ts";
import { settingsCatalogue } from "../settings/settings.ts";
import {
  cautionAnswersSchema,
  clinicLimitsSchema,
  gateOpeningSchema,
  kneeReadingSchema,
  sessionOperationSchema,
} from "./cautions-schema.ts";
import { fileEntrySchema } from "./file-entry.ts";
import { effusionGrades, stopKinds } from "./gate-words.ts";
import { otherInjurySchema } from "./other-injury.ts";
import { protocolSchema } from "./protocol-schema.ts";
import { referenceValueSchema } from "./reference-value.ts";
import { dropHeight, isoDate, side, text } from "./schema-parts.ts";
import { statedPlateSchema } from "./stated-plate.ts";

const { gravity, bodyMassMaximumKg } = settingsCatalogue;

/** Everything a person has stated about one session: the content of `session.json`. Keys stand in the order of writing. */
export const sessionSchema = z.strictObject({
  athlete: z
    .strictObject({
      code: text,
      name: z.string().exactOptional(),
      sex: z.enum(["female", "male"]).exactOptional(),
      birthYear: z.int().min(1900).max(2100).exactOptional(),
      sport: z.string().exactOptional(),
      /** Level of play in words ("national league"). */
      level: z.string().exactOptional(),
    })
    .exactOptional(),
  involved: z.enum(involvedSides).exactOptional(),
  /** The injury in words ("right knee, anterior cruciate ligament reconstruction, hamstring graft"). */
  injury: z.string().exactOptional(),
  /** Injuries on this day that involve no side, each a caution on its limb. */
  otherInjuries: z.array(otherInjurySchema).readonly().exactOptional(),
  date: isoDate.exactOptional(),
  milestone: z.string().exactOptional(),
  /** Body mass, kilograms. */
  massKg: z.number().positive().max(bodyMassMaximumKg.default).exactOptional(),
  /** Local gravity, m/s². */
  gravity: z.number().min(gravity.minimum).max(gravity.maximum).exactOptional(),
  /** What is tested in this session: kept whole, so that a later change of the clinic's protocol alters no session. */
  protocol: protocolSchema.exactOptional(),
  dropHeightMetres: dropHeight.exactOptional(),
  /** The leg that steps off the box first. */
  leadingLeg: side.exactOptional(),
  /** Which foot stood on which force column; counts as stated by the tester. */
  plates: z.array(statedPlateSchema).readonly().exactOptional(),
  /** The operation that the involved knee had; absent where it had none, or nobody stated it. */
  operation: sessionOperationSchema.exactOptional(),
  /** Worst pain during the tests, 0 to 10, and effusion, as one statement without a time; `readings` have theirs. */
  pain: z.number().min(0).max(10).exactOptional(),
  effusion: z.enum(effusionGrades).exactOptional(),
  /** Pain and effusion as they were read, in the order of writing; only ever added to. */
  readings: z.array(kneeReadingSchema).readonly().exactOptional(),
  /** Without a kind the reason may be the knee, and counts so. */
  stopped: z.strictObject({ reason: text, kind: z.enum(stopKinds).exactOptional() }).exactOptional(),
  /**
   * The cautions for jump testing: their answers, only ever added to. `answeredBy`, `date` and `note` alone say that
   * somebody asked, and no answer.
   */
  cautions: z
    .strictObject({
      answeredBy: text.exactOptional(),
      date: isoDate.exactOptional(),
      note: z.string().exactOptional(),
      answers: z.array(cautionAnswersSchema).readonly().exactOptional(),
    })
    .exactOptional(),
  /** What the named treating clinician opened although it was closed; only ever added to. */
  gateOpenings: z.array(gateOpeningSchema).readonly().exactOptional(),
  /** The clinic's limits as they were for this session; absent: the program's default. */
  limits: clinicLimitsSchema.exactOptional(),
  /** True for recordings made by a simulator; printed on every sheet. */
  simulated: z.boolean().exactOptional(),
  note: z.string().exactOptional(),
  references: z.array(referenceValueSchema).readonly().exactOptional(),
  files: z.array(fileEntrySchema).readonly().exactOptional(),
});

export type SessionDescription = SchemaType<typeof sessionSchema>;

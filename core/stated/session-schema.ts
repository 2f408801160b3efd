import { z } from "zod";
import { eventNames } from "../ground/event-name.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import { testKinds } from "../ground/test-kind.ts";
import { settingsCatalogue } from "../settings/settings.ts";
import {
  cautionAnswersSchema,
  clinicLimitsSchema,
  effusionGrades,
  gateOpeningSchema,
  kneeReadingSchema,
  sessionOperationSchema,
  stopKinds,
} from "./cautions-schema.ts";
import { bodyParts } from "./session.ts";

/** Words of the checks that no type can say; they complete "… is expected". */
export const expectedRelativePath = "a path inside the session's folder with forward slashes";
const expectedKnownMeasure = "a measure this version knows, in the unit of that measure";

const expectedEnoughAttempts = "at least as many attempts as trials";
const expectedLeadsWithinTrials = "no more trials with each leg leading than trials in all";

const text = z.string().min(1);
const isoDate = z.iso.date();
const side = z.enum(["left", "right"]);
const limb = z.enum(["left", "right", "both"]);
const dropHeight = z.number().positive().max(2);
const columnKey = z.union([z.int().min(1), text]);

function isInsidePath(path: string): boolean {
  return !path.includes("\\") && path.split("/").every((part) => part !== "" && part !== "." && part !== "..");
}

const eventEdit = z.strictObject({
  name: z.enum(eventNames),
  contactIndex: z.int().min(1).exactOptional(),
  time: z.number().min(0),
});

/** One entry of `plates`. */
export const plateSchema = z.strictObject({ column: text, foot: side });

/** One entry of `files`. */
export const fileEntrySchema = z.strictObject({
  file: text.refine(isInsidePath, expectedRelativePath),
  trial: z.int().min(1).exactOptional(),
  test: z.enum(testKinds).exactOptional(),
  limb: limb.exactOptional(),
  rateHz: z.number().positive().exactOptional(),
  unit: z.enum(["N", "kN", "kgf", "lbf"]).exactOptional(),
  decimalMark: z.enum(["point", "comma"]).exactOptional(),
  columns: z
    .strictObject({
      time: columnKey.exactOptional(),
      left: columnKey.exactOptional(),
      right: columnKey.exactOptional(),
      total: columnKey.exactOptional(),
    })
    .exactOptional(),
  swapPlates: z.boolean().exactOptional(),
  resample: z.boolean().exactOptional(),
  resampleHz: z.number().positive().exactOptional(),
  excluded: z.strictObject({ reason: text }).exactOptional(),
  kept: z.boolean().exactOptional(),
  seen: z.boolean().exactOptional(),
  practice: z.boolean().exactOptional(),
  events: z.array(eventEdit).readonly().exactOptional(),
  plates: z.array(plateSchema).readonly().exactOptional(),
  dropHeightMetres: dropHeight.exactOptional(),
  leadingLeg: side.exactOptional(),
});

const protocolTest = z.strictObject({ test: z.enum(testKinds), legs: z.enum(["both", "single"]) });
const trialCount = z.int().min(1).max(30);
const seconds = z.number().min(0).max(3600);
const landings = z.int().min(0).max(1000);

const plannedTest = protocolTest
  .extend({
    trials: trialCount,
    mostAttempts: trialCount,
    practice: z.int().min(0).max(30).exactOptional(),
    dropHeightMetres: dropHeight.exactOptional(),
    perLeadingLeg: trialCount.exactOptional(),
    only: z.literal("uninvolved").exactOptional(),
    addedBy: text.exactOptional(),
  })
  .refine((entry) => entry.mostAttempts >= entry.trials, expectedEnoughAttempts)
  .refine((entry) => 2 * (entry.perLeadingLeg ?? 0) <= entry.trials, expectedLeadsWithinTrials);

/** The session's protocol, whole. */
export const protocolSchema = z.strictObject({
  id: text,
  name: text,
  version: z.int().min(1),
  stage: text,
  tests: z.array(plannedTest).readonly(),
  mayAdd: z.array(plannedTest).readonly().exactOptional(),
  notYet: z.array(protocolTest.extend({ reason: text })).readonly(),
  stopRules: z.array(text).readonly(),
  landingsADay: z.strictObject({ twoLeg: landings, perLeg: landings }).exactOptional(),
  rest: z
    .strictObject({
      betweenTestsSeconds: seconds,
      betweenJumpsSeconds: z.strictObject({ least: seconds, most: seconds }),
    })
    .exactOptional(),
  notes: z.array(text).readonly().exactOptional(),
});

/** One entry of `references`. */
export const referenceSchema = z
  .strictObject({
    test: z.enum(testKinds),
    legs: z.enum(["both", "single"]),
    measure: text,
    dropHeightMetres: dropHeight.exactOptional(),
    side,
    value: z.number().positive(),
    unit: z.enum(["N", "kg", "m/s", "m", "s", "N.s", "W", "N/s", "N/m", "N/kg", "W/kg", "N.s/kg", "1"]),
    date: isoDate,
    origin: z.enum(["pre-injury", "pre-operative"]),
  })
  .refine(
    (entry) => measureCatalogue.some((measure) => measure.id === entry.measure && measure.unit === entry.unit),
    expectedKnownMeasure,
  );

/** One entry of `otherInjuries`. */
const otherInjurySchema = z.strictObject({
  side,
  bodyPart: z.enum(bodyParts),
  what: text,
  date: isoDate.exactOptional(),
});

/** Everything a `session.json` may hold: the run-time twin of `SessionDescription`. Keys stand in the order of writing. */
export const sessionSchema = z.strictObject({
  athlete: z
    .strictObject({
      code: text,
      name: z.string().exactOptional(),
      sex: z.enum(["female", "male"]).exactOptional(),
      birthYear: z.int().min(1900).max(2100).exactOptional(),
      sport: z.string().exactOptional(),
      level: z.string().exactOptional(),
    })
    .exactOptional(),
  involved: z.enum(["left", "right", "both", "none"]).exactOptional(),
  injury: z.string().exactOptional(),
  otherInjuries: z.array(otherInjurySchema).readonly().exactOptional(),
  date: isoDate.exactOptional(),
  milestone: z.string().exactOptional(),
  massKg: z.number().positive().max(settingsCatalogue.bodyMassMaximumKg.default).exactOptional(),
  gravity: z.number().min(settingsCatalogue.gravity.minimum).max(settingsCatalogue.gravity.maximum).exactOptional(),
  protocol: protocolSchema.exactOptional(),
  dropHeightMetres: dropHeight.exactOptional(),
  leadingLeg: side.exactOptional(),
  plates: z.array(plateSchema).readonly().exactOptional(),
  operation: sessionOperationSchema.exactOptional(),
  pain: z.number().min(0).max(10).exactOptional(),
  effusion: z.enum(effusionGrades).exactOptional(),
  readings: z.array(kneeReadingSchema).readonly().exactOptional(),
  stopped: z.strictObject({ reason: text, kind: z.enum(stopKinds).exactOptional() }).exactOptional(),
  cautions: z
    .strictObject({
      answeredBy: text.exactOptional(),
      date: isoDate.exactOptional(),
      note: z.string().exactOptional(),
      answers: z.array(cautionAnswersSchema).readonly().exactOptional(),
    })
    .exactOptional(),
  gateOpenings: z.array(gateOpeningSchema).readonly().exactOptional(),
  limits: clinicLimitsSchema.exactOptional(),
  simulated: z.boolean().exactOptional(),
  note: z.string().exactOptional(),
  references: z.array(referenceSchema).readonly().exactOptional(),
  files: z.array(fileEntrySchema).readonly().exactOptional(),
});

/**
 * The JSON Schema (draft 2020-12) published beside this file as `session.schema.json`; a test holds the two together.
 * After a change here `node build/write-schemas.ts` writes the new file.
 */
export function sessionJsonSchema(): Record<string, unknown> {
  return {
    title: "session.json",
    description: "What was said about one session of recordings: athlete, sides, gate, references, and each file.",
    ...z.toJSONSchema(sessionSchema, { target: "draft-2020-12", io: "input" }),
  };
}

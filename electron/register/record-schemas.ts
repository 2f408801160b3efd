import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { testKinds } from "../../core/ground/test-kind.ts";
import { bodyParts } from "../../core/stated/body-parts.ts";
import { cautionAnswersSchema, clinicLimitsSchema, sessionOperationSchema } from "../../core/stated/cautions-schema.ts";
import { fileEntrySchema } from "../../core/stated/file-entry.ts";
import { effusionGrades } from "../../core/stated/gate-words.ts";
import { sessionSchema } from "../../core/stated/session.ts";
import { copyCheckSchema } from "./copies/check-schema.ts";

/** What each record of the register may hold. No Node imports: screens use the types that follow from these schemas. */

const text = z.string().min(1);
const freeText = z.string();
const isoDate = z.iso.date();
const isoInstant = z.iso.datetime();
const side = z.enum(["left", "right"]);
const described = sessionSchema.shape;
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** A person. Names are optional, so that a register of codes alone is natural. */
export const athleteSchema = z.strictObject({
  code: text,
  name: freeText.exactOptional(),
  sex: z.enum(["female", "male"]).exactOptional(),
  birthYear: z.int().min(1900).max(2100).exactOptional(),
  birthDate: isoDate.exactOptional(),
  heightMetres: z.number().positive().max(3).exactOptional(),
  sport: freeText.exactOptional(),
  level: freeText.exactOptional(),
  dominantSide: side.exactOptional(),
  /** The day on which somebody stated that nobody is injured. */
  nobodyInjured: isoDate.exactOptional(),
  note: freeText.exactOptional(),
});

/** Which part of the body, and whether a person marks its side as involved; records from before have none of these. */
const involvement = {
  bodyPart: z.enum(bodyParts).exactOptional(),
  involved: z.boolean().exactOptional(),
  involvedFrom: isoDate.exactOptional(),
  until: isoDate.exactOptional(),
};

const injurySchema = z.strictObject({
  side,
  ...involvement,
  structure: text,
  date: isoDate,
  restrictions: freeText.exactOptional(),
  note: freeText.exactOptional(),
});

const operationSchema = z.strictObject({
  side,
  ...involvement,
  /** The side that a person confirmed although the injury is on the other one. */
  sideConfirmed: side.exactOptional(),
  procedure: text,
  graft: freeText.exactOptional(),
  /** Absent where nobody knows it. */
  date: isoDate.exactOptional(),
  /** Whether meniscus or cartilage was repaired; absent as good as not known. */
  repaired: sessionOperationSchema.shape.repaired,
  /** The surgeon's restrictions, in the surgeon's words. */
  restrictions: freeText.exactOptional(),
  note: freeText.exactOptional(),
});

/** What earlier versions kept of who was asked before jumping, and when; read on, and no longer added to. */
const cautionsSchema = z.strictObject({
  before: z.enum(["session", "single-leg tests", "drop tests"]),
  answeredBy: text,
  date: isoDate,
  at: isoInstant.exactOptional(),
  answers: z
    .array(z.strictObject({ question: text, answer: freeText }))
    .readonly()
    .exactOptional(),
  note: freeText.exactOptional(),
});

const pain = z.number().min(0).max(10);
const effusion = z.enum(effusionGrades);

/** Under which conditions the athlete jumped; screens offer the last session's. */
const conditionsSchema = z.strictObject({
  arms: freeText.exactOptional(),
  instruction: freeText.exactOptional(),
  boxHeightMetres: z.number().positive().max(2).exactOptional(),
  shoes: freeText.exactOptional(),
  braceOrTape: freeText.exactOptional(),
  surface: freeText.exactOptional(),
  warmUp: freeText.exactOptional(),
  practiceJumps: z.int().min(0).exactOptional(),
  limbOrder: freeText.exactOptional(),
  restSeconds: z.number().min(0).exactOptional(),
  painkillerWithin24Hours: z.boolean().exactOptional(),
  timeOfDay: freeText.exactOptional(),
});

const findingSchema = z.strictObject({
  code: text,
  severity: z.enum(["note", "warning", "refusal"]),
  message: text,
  where: freeText,
  removes: z.array(text).readonly(),
  action: freeText,
});

const sessionRecordSchema = z.strictObject({
  /** The label under which results show the session; the folder it was imported from, relative to what was named. */
  folder: freeText,
  date: described.date,
  milestone: described.milestone,
  /** What is tested, whole: a later change of the clinic's protocol alters no session. */
  protocol: described.protocol,
  place: freeText.exactOptional(),
  tester: freeText.exactOptional(),
  massKg: described.massKg,
  gravity: described.gravity,
  involved: described.involved,
  injury: described.injury,
  otherInjuries: described.otherInjuries,
  dropHeightMetres: described.dropHeightMetres,
  leadingLeg: described.leadingLeg,
  plates: described.plates,
  pain: z
    .strictObject({
      before: pain.exactOptional(),
      during: pain.exactOptional(),
      after: pain.exactOptional(),
      nextDay: pain.exactOptional(),
    })
    .exactOptional(),
  effusion: z
    .strictObject({
      before: effusion.exactOptional(),
      during: effusion.exactOptional(),
      after: effusion.exactOptional(),
      nextDay: effusion.exactOptional(),
    })
    .exactOptional(),
  stopped: described.stopped,
  cautions: z.array(cautionsSchema).readonly().exactOptional(),
  /** Answers to the cautions, only ever added to. */
  cautionAnswers: z.array(cautionAnswersSchema).readonly().exactOptional(),
  readings: described.readings,
  gateOpenings: described.gateOpenings,
  limits: described.limits,
  /** What the session's own file says of the operation, where it says something. */
  operation: described.operation,
  conditions: conditionsSchema.exactOptional(),
  simulated: described.simulated,
  note: described.note,
  references: described.references,
  /** What the session's own file says of the athlete, kept where it differs from the athlete's record. */
  athleteAsStated: described.athlete,
  /** Entries of the session's own file that speak of no recording of the session, with their place in its list. */
  otherEntries: z
    .array(z.strictObject({ position: z.int().min(0), entry: fileEntrySchema }))
    .readonly()
    .exactOptional(),
  /** What could not be read of the session's own file. */
  readingFindings: z.array(findingSchema).readonly().exactOptional(),
});

const protocolSchema = z.strictObject({
  name: text,
  stage: text,
  tests: z
    .array(
      z.strictObject({
        test: z.enum(testKinds),
        legs: z.enum(["both", "single"]),
        dropHeightMetres: z.number().positive().max(2).exactOptional(),
        trialsWanted: z.int().min(1),
        mostAttemptsPerLimb: z.int().min(1),
      }),
    )
    .readonly(),
  /** Tests this stage does not do yet. */
  notYet: z.array(z.enum(testKinds)).readonly(),
  stopRules: z.array(text).readonly(),
});

/** What was said of a file, or of one trial in it, apart from which. */
const statedSchema = fileEntrySchema.omit({ file: true, trial: true });

const recordingSchema = z.strictObject({
  /** Relative to the session's folder, forward slashes. */
  path: fileEntrySchema.shape.file,
  sha256,
  byteLength: z.int().min(0),
  /** What was said of all its trials: layout answers, test, limb; with its place in the list of the session's file. */
  stated: statedSchema.exactOptional(),
  position: z.int().min(0).exactOptional(),
});

const trialSchema = z.strictObject({
  /** Counted from 1 within its recording. */
  number: z.int().min(1),
  stated: statedSchema,
  position: z.int().min(0),
  span: z.strictObject({ startSeconds: z.number().min(0), endSeconds: z.number().min(0) }).exactOptional(),
  attempt: z.int().min(1).exactOptional(),
  seenBy: text.exactOptional(),
  seenAt: isoInstant.exactOptional(),
  excludedBy: text.exactOptional(),
  excludedAt: isoInstant.exactOptional(),
  keptBy: text.exactOptional(),
  keptAt: isoInstant.exactOptional(),
});

/** Something a plate cannot measure: strength, range of motion, laxity, a questionnaire. */
const enteredFindingSchema = z.strictObject({
  kind: text,
  date: isoDate,
  side: side.exactOptional(),
  value: z.union([z.number(), z.string(), z.boolean()]),
  unit: text.exactOptional(),
  source: freeText.exactOptional(),
  note: freeText.exactOptional(),
});

const consentSchema = z.strictObject({
  /** Who may see the sheet: "athlete", "surgeon", "coach" or in the clinic's words. */
  reader: text,
  sheet: text,
  given: z.boolean(),
  date: isoDate,
  recordedBy: text.exactOptional(),
  note: freeText.exactOptional(),
});

const settingsDocumentSchema = z.strictObject({
  name: text,
  hash: sha256,
  values: z.record(z.string(), z.union([z.number(), z.string()])),
  /** Of the document that holds the clinic's limits for jump testing. */
  limits: clinicLimitsSchema.exactOptional(),
});

const decisionSchema = z.strictObject({ text, author: text, date: isoDate });

/** A copy kept elsewhere, so that erasing can name what it cannot reach. */
const copySchema = z.strictObject({
  kind: z.enum(["backup", "archive"]),
  path: text,
  at: isoInstant,
  /** Whoever has it needs a passphrase: its own, or the register's of then. */
  encrypted: z.boolean(),
  /** It has a passphrase of its own; absent in what earlier versions noted. */
  sealed: z.boolean().exactOptional(),
  /** When it was last checked, and what was found; absent: never. */
  verifiedAt: isoInstant.exactOptional(),
  found: copyCheckSchema.exactOptional(),
});

/** One schema for each kind of record. */
export const recordSchemas = {
  athletes: athleteSchema,
  protocols: protocolSchema,
  settingsDocuments: settingsDocumentSchema,
  injuries: injurySchema,
  operations: operationSchema,
  sessions: sessionRecordSchema,
  recordings: recordingSchema,
  trials: trialSchema,
  enteredFindings: enteredFindingSchema,
  consents: consentSchema,
  decisions: decisionSchema,
  copies: copySchema,
} as const;

export type RecordKind = keyof typeof recordSchemas;

/** What a record of each kind holds. */
export type RecordContent<Kind extends RecordKind> = SchemaType<(typeof recordSchemas)[Kind]>;

import { z } from "zod";
import { archiveByteLimit } from "../../core/recording/size-limit.ts";
import { clinicLimitsSchema } from "../../core/stated/cautions-schema.ts";
import { cautionAdditionSchema } from "../cautions/caution-addition.ts";
import { settledFields } from "../refusals/settled-fields.ts";
import { type RecordKind, recordSchemas } from "../register/record-schemas.ts";
import { recordKinds } from "../register/record-tables.ts";
import type { RegisterApi } from "./register-api.ts";

const nothing = z.strictObject({}).readonly();

const line = (most: number) =>
  z
    .string()
    .max(most)
    .regex(/^\P{Cc}*$/u, "must be one line of text");
const place = line(4096).min(1);
/** The longest line a person types, in bytes of UTF-8. */
const passphraseByteLimit = 4000;
const passphrase = z
  .instanceof(Uint8Array)
  .refine(
    ({ byteLength }) => byteLength >= 1 && byteLength <= passphraseByteLimit,
    `must have 1 to ${passphraseByteLimit} bytes`,
  );
const id = z.uuid();
const isoDate = z.iso.date();
const recordKey = z.strictObject({ kind: z.enum(recordKinds as readonly [RecordKind, ...RecordKind[]]), id });

const written = <Kind extends "injuries" | "operations" | "consents">(kind: Kind) =>
  z.strictObject({ kind: z.literal(kind), id, athlete: id.exactOptional(), content: recordSchemas[kind] });

const writtenRecord = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("athletes"),
    id,
    athlete: id.exactOptional(),
    content: recordSchemas.athletes.extend({ code: line(64).min(1) }),
  }),
  written("injuries"),
  written("operations"),
  written("consents"),
]);

const session = recordSchemas.sessions.shape;
const notes = {
  place: session.place,
  tester: session.tester,
  conditions: session.conditions,
};

/** The name of a file, or an identifier. */
const copyKey = line(255).min(1);

const backupChoice = z.strictObject({
  path: place,
  filePassphrase: passphrase.exactOptional(),
  registerPassphrase: passphrase.exactOptional(),
});

/** What each request of the register must look like. */
export const registerRequestSchemas = {
  "register.openOwn": nothing,
  "register.lock": nothing,
  "register.unlock": z.strictObject({ passphrase, remember: z.boolean().exactOptional() }),
  "register.setPassphrase": z.strictObject({ passphrase }),
  "passphrase.weigh": z.strictObject({ passphrase }),
  "register.removePassphrase": nothing,
  "register.forgetPassphrase": nothing,
  "register.lockAfter": z.strictObject({ minutes: z.int().min(0).max(720) }),
  "register.actBy": z.strictObject({ name: line(100) }),
  "register.countWhileLocked": z.strictObject({ counts: z.boolean() }),
  "register.attend": z.strictObject({ present: z.boolean() }),
  "register.verify": nothing,
  "athletes.list": z.strictObject({
    filter: z.strictObject({
      text: line(200).exactOptional(),
      involved: z.enum(["left", "right", "both", "none"]).exactOptional(),
      operatedFrom: isoDate.exactOptional(),
      operatedTo: isoDate.exactOptional(),
      milestone: line(200).exactOptional(),
      lastSessionFrom: isoDate.exactOptional(),
      lastSessionTo: isoDate.exactOptional(),
    }),
  }),
  "athletes.page": z.strictObject({ athlete: id }),
  "records.save": z.strictObject({
    record: writtenRecord,
    before: z
      .union([recordSchemas.athletes, recordSchemas.injuries, recordSchemas.operations, recordSchemas.consents])
      .exactOptional(),
    settled: settledFields.exactOptional(),
  }),
  "records.bin": recordKey,
  "records.takeOut": recordKey,
  "records.previewErasure": recordKey,
  "records.erase": recordKey,
  "bin.read": nothing,
  "sessions.open": z.strictObject({ session: id }),
  "sessions.start": z.strictObject({
    session: id,
    athlete: id,
    plan: z.strictObject({
      ...notes,
      date: isoDate,
      milestone: session.milestone,
      protocol: session.protocol,
      massKg: session.massKg,
      involved: session.involved,
      injury: session.injury,
      cautions: cautionAdditionSchema.exactOptional(),
    }),
  }),
  "sessions.note": z.strictObject({
    session: id,
    notes: z.strictObject(notes),
    before: z.strictObject(notes).exactOptional(),
    settled: settledFields.exactOptional(),
  }),
  "sessions.keep": z.strictObject({
    folder: line(1024),
    athlete: z.union([
      z.strictObject({ id }),
      z.strictObject({ code: line(64).min(1), name: line(200).min(1).exactOptional() }),
    ]),
  }),
  "limits.read": nothing,
  "limits.set": z.strictObject({
    limits: clinicLimitsSchema.omit({ setAt: true, setBy: true }).extend({ setBy: line(200).min(1) }),
    before: clinicLimitsSchema,
  }),
  "copies.read": nothing,
  "copies.verify": z.strictObject({ key: copyKey, passphrase: passphrase.exactOptional() }),
  "copies.forget": z.strictObject({ key: copyKey }),
  "backups.make": z.strictObject({ place: place.exactOptional(), passphrase: passphrase.exactOptional() }),
  "backups.preview": backupChoice,
  "backups.restore": backupChoice,
  "archive.export": z.strictObject({
    athlete: id.exactOptional(),
    passphrase: passphrase.exactOptional(),
    place: place.exactOptional(),
  }),
  "archive.import": z.strictObject({
    bytes: z
      .instanceof(Uint8Array)
      .refine((bytes) => bytes.byteLength <= archiveByteLimit, "must not be larger than 64 MB")
      .exactOptional(),
    place: place.exactOptional(),
    passphrase: passphrase.exactOptional(),
  }),
} as const satisfies { readonly [Name in keyof RegisterApi]: z.ZodType<RegisterApi[Name]["request"]> };

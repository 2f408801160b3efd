import { z } from "zod";
import { involvedSides } from "../../core/ground/limb.ts";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { type ClinicLimits, clinicLimitsSchema } from "../../core/stated/cautions-schema.ts";
import { isoDate } from "../../core/stated/schema-parts.ts";
import { cautionAdditionSchema } from "../cautions/caution-addition.ts";
import { settledFields } from "../refusals/settled-fields.ts";
import { type RecordKind, recordSchemas } from "../register/record-schemas.ts";
import { recordKinds } from "../register/record-tables.ts";
import type {
  AthleteLine,
  AthletePage,
  CertificateSection,
  ErasureCertificate,
  ErasurePreview,
} from "../register/register-views.ts";
import type { BinnedRecord } from "./register-replies.ts";
import { nothing, request } from "./request.ts";
import { folder, id, line } from "./request-parts.ts";
import type { Workspace } from "./workspace-view.ts";

const recordKey = z.strictObject({ kind: z.enum(recordKinds as readonly [RecordKind, ...RecordKind[]]), id });

const written = <Kind extends "injuries" | "operations" | "consents">(kind: Kind) =>
  z.strictObject({ kind: z.literal(kind), id, athlete: id.exactOptional(), content: recordSchemas[kind] });

/** A record that a form of the Athletes area writes, with whose it is: new where no record has its identifier yet. */
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

export type WrittenRecord = SchemaType<typeof writtenRecord>;
export type WrittenKind = WrittenRecord["kind"];

const session = recordSchemas.sessions.shape;

/** What is noted during a session beside its description; absent parts stay. */
const notes = z.strictObject({ place: session.place, tester: session.tester, conditions: session.conditions });

export type SessionNotes = SchemaType<typeof notes>;

/** What stands before the first jump of a session. */
const plan = notes.extend({
  date: isoDate,
  milestone: session.milestone,
  protocol: session.protocol,
  massKg: session.massKg,
  involved: session.involved,
  injury: session.injury,
  /** What was answered and read before it. */
  cautions: cautionAdditionSchema.exactOptional(),
});

export type SessionPlan = SchemaType<typeof plan>;

/** Athletes, their records and sessions, and the clinic's limits. */
export const recordRequests = {
  /** `recent`: identifiers of the athletes opened last, the latest first. */
  "athletes.list": request(
    z.strictObject({
      filter: z.strictObject({
        text: line(200).exactOptional(),
        involved: z.enum(involvedSides).exactOptional(),
        operatedFrom: isoDate.exactOptional(),
        operatedTo: isoDate.exactOptional(),
        milestone: line(200).exactOptional(),
        lastSessionFrom: isoDate.exactOptional(),
        lastSessionTo: isoDate.exactOptional(),
      }),
    }),
  ).replies<{ readonly athletes: readonly AthleteLine[]; readonly recent: readonly string[] }>(),
  /** Nothing where the athlete is not in the register, or in its bin. */
  "athletes.page": request(z.strictObject({ athlete: id })).replies<{ readonly page?: AthletePage }>(),
  /** Keeps what a form changed of a record, field by field; `before` is what the record said when the form began. */
  "records.save": request(
    z.strictObject({
      record: writtenRecord,
      before: z
        .union([recordSchemas.athletes, recordSchemas.injuries, recordSchemas.operations, recordSchemas.consents])
        .exactOptional(),
      settled: settledFields.exactOptional(),
    }),
  ).replies<Workspace>(),
  "records.bin": request(recordKey).replies<Workspace>(),
  "records.takeOut": request(recordKey).replies<Workspace>(),
  "records.previewErasure": request(recordKey).replies<ErasurePreview>(),
  /**
   * For good, with everything that hangs on it; only what lies in the bin. Asked again while something remained to be
   * done, it goes on with that.
   */
  "records.erase": request(recordKey).replies<{
    readonly certificate: ErasureCertificate;
    readonly sections: readonly CertificateSection[];
  }>(),
  "bin.read": request(nothing).replies<{ readonly records: readonly BinnedRecord[] }>(),
  /** Shows a session of the register in every area. */
  "sessions.open": request(z.strictObject({ session: id })).replies<Workspace>(),
  /** Begins a session of an athlete under an identifier of the screen's making, and shows it. */
  "sessions.start": request(z.strictObject({ session: id, athlete: id, plan })).replies<Workspace>(),
  "sessions.note": request(
    z.strictObject({ session: id, notes, before: notes.exactOptional(), settled: settledFields.exactOptional() }),
  ).replies<Workspace>(),
  /** Puts a session that was brought in as files into the register, as one of an athlete that is there or is new. */
  "sessions.keep": request(
    z.strictObject({
      folder,
      athlete: z.union([
        z.strictObject({ id }),
        z.strictObject({ code: line(64).min(1), name: line(200).min(1).exactOptional() }),
      ]),
    }),
  ).replies<Workspace>(),
  /** The clinic's limits of the register; empty while nobody has set any. */
  "limits.read": request(nothing).replies<{ readonly limits: ClinicLimits }>(),
  /** Confirms or changes them, by name; they hold for sessions from now on, and change none that is there. */
  "limits.set": request(
    z.strictObject({
      limits: clinicLimitsSchema.omit({ setAt: true, setBy: true }).extend({ setBy: line(200).min(1) }),
      /** What the form began with; refused where another window set others since. */
      before: clinicLimitsSchema,
    }),
  ).replies<{ readonly limits: ClinicLimits }>(),
};

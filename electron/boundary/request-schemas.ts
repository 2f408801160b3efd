import { z } from "zod";
import { eventNames } from "../../core/ground/event-name.ts";
import { testKinds } from "../../core/ground/test-kind.ts";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";
import { settingsCatalogue } from "../../core/settings/settings.ts";
import { alignments } from "../../core/sides/curves.ts";
import { sessionOperationSchema } from "../../core/stated/cautions-schema.ts";
import { stopKinds } from "../../core/stated/gate-words.ts";
import { protocolSchema } from "../../core/stated/protocol-schema.ts";
import { sessionSchema } from "../../core/stated/session.ts";
import { cautionAdditionSchema } from "../cautions/caution-addition.ts";
import { settledFields } from "../refusals/settled-fields.ts";
import type { HostApi, HostRequestName } from "./host-api.ts";
import { registerRequestSchemas } from "./register-request-schemas.ts";

/** Most lines of a file given at a time. */
export const lineLimit = 1000;

/** Largest saved layout taken in. */
const layoutByteLimit = 1024 * 1024;

const nothing = z.strictObject({}).readonly();

/** One line of text a person typed: nothing that could hide or break a line. */
const line = (most: number) =>
  z
    .string()
    .max(most)
    .regex(/^\P{Cc}*$/u, "must be one line of text");

const folder = line(1024);
const file = line(1024).min(1);
const trial = z.int().min(1).max(10_000);
const reason = line(500).min(1);
const test = z.enum(testKinds);
const limb = z.enum(["left", "right", "both"]);
const side = z.enum(["left", "right"]);
const dropHeight = z.number().positive().max(2);

/** A relative path with forward slashes; only ever a key in memory, yet `..` and the like have no business in it. */
const relativePath = file.refine(
  (path) => !path.includes("\\") && path.split("/").every((part) => part !== "" && part !== "." && part !== ".."),
  "must be a relative path with forward slashes",
);

const isoDate = z.iso.date();
const columnKey = z.union([z.int().min(1).max(1000), line(200).min(1)]);

const rate = z.number().min(1).max(1_000_000);

const assignment = {
  test: test.nullable().exactOptional(),
  limb: limb.nullable().exactOptional(),
  dropHeightMetres: dropHeight.nullable().exactOptional(),
  leadingLeg: side.nullable().exactOptional(),
  practice: z.boolean().nullable().exactOptional(),
};

const answers = z.strictObject({
  ...assignment,
  rateHz: rate.nullable().exactOptional(),
  unit: z.enum(["N", "kN", "kgf", "lbf"]).nullable().exactOptional(),
  decimalMark: z.enum(["point", "comma"]).nullable().exactOptional(),
  swapPlates: z.boolean().nullable().exactOptional(),
  resample: z.boolean().nullable().exactOptional(),
  resampleHz: rate.nullable().exactOptional(),
  columns: z
    .strictObject({
      time: columnKey.exactOptional(),
      left: columnKey.exactOptional(),
      right: columnKey.exactOptional(),
      total: columnKey.exactOptional(),
    })
    .nullable()
    .exactOptional(),
});

const layoutName = line(200).min(1);

const athlete = z.strictObject({
  code: line(64).min(1),
  name: line(200).exactOptional(),
  sex: z.enum(["female", "male"]).exactOptional(),
  birthYear: z.int().min(1900).max(2100).exactOptional(),
  sport: line(100).exactOptional(),
});

const statedPlates = z.array(z.strictObject({ column: line(200).min(1), foot: side })).max(4);

const sessionChange = z.strictObject({
  athlete: athlete.nullable().exactOptional(),
  involved: z.enum(["left", "right", "both", "none"]).nullable().exactOptional(),
  injury: line(500).nullable().exactOptional(),
  date: isoDate.nullable().exactOptional(),
  milestone: line(200).nullable().exactOptional(),
  massKg: z.number().positive().max(settingsCatalogue.bodyMassMaximumKg.default).nullable().exactOptional(),
  protocol: protocolSchema.nullable().exactOptional(),
  plates: statedPlates.nullable().exactOptional(),
  operation: sessionOperationSchema.nullable().exactOptional(),
  stopped: z
    .strictObject({ reason, kind: z.enum(stopKinds).exactOptional() })
    .nullable()
    .exactOptional(),
  note: z.string().max(5000).nullable().exactOptional(),
});

const eventEdit = z.strictObject({
  name: z.enum(eventNames),
  contactIndex: z.int().min(1).max(10_000).exactOptional(),
  time: z.number().min(0).max(86_400),
});

const eventEdits = z
  .array(eventEdit)
  .max(200)
  .refine(
    (events) => new Set(events.map((each) => `${each.name} ${each.contactIndex ?? ""}`)).size === events.length,
    "must name each event once",
  );

const trialChange = z.strictObject({
  excluded: z.strictObject({ reason }).nullable().exactOptional(),
  kept: z.boolean().exactOptional(),
  seen: z.boolean().exactOptional(),
  events: eventEdits.exactOptional(),
});

/** What the screen showed of the session when the change began, and what the person chose since. */
const started = { before: sessionSchema.exactOptional(), settled: settledFields.exactOptional() };

const stepRequest = z.strictObject({
  folder: folder.exactOptional(),
  step: z.int().min(1).exactOptional(),
  agreed: z.boolean().exactOptional(),
});

/** What each request must look like; anything more, less or larger is refused before a handler sees it. */
export const requestSchemas = {
  "application.describe": nothing,
  "workspace.read": nothing,
  "workspace.openDemo": nothing,
  "workspace.clear": nothing,
  "workspace.show": z.strictObject({ folder }),
  "workspace.undo": stepRequest,
  "workspace.redo": stepRequest,
  "recordings.add": z.strictObject({
    path: relativePath,
    bytes: z
      .instanceof(Uint8Array)
      .refine((bytes) => bytes.byteLength <= recordingByteLimit, "must not be larger than 64 MB"),
    batch: line(64).min(1).exactOptional(),
  }),
  "recordings.takeOut": z.strictObject({ folder, files: z.array(file).min(1).max(10_000) }),
  "recordings.endBatch": z.strictObject({ batch: line(64).min(1) }),
  "recordings.lines": z.strictObject({
    folder,
    file,
    first: z.int().min(1).max(1_000_000_000),
    count: z.int().min(1).max(lineLimit),
  }),
  "recordings.outline": z.strictObject({ folder, file }),
  "recordings.assign": z.strictObject({
    folder,
    rows: z
      .array(z.strictObject({ file, trial: trial.exactOptional(), ...assignment }))
      .min(1)
      .max(10_000),
    ...started,
  }),
  "layouts.remember": z.strictObject({ folder, file, name: layoutName }),
  "layouts.rename": z.strictObject({ name: layoutName, to: layoutName }),
  "layouts.remove": z.strictObject({ name: layoutName }),
  "layouts.import": z.strictObject({
    bytes: z
      .instanceof(Uint8Array)
      .refine((bytes) => bytes.byteLength <= layoutByteLimit, "must not be larger than 1 MB"),
  }),
  "layouts.export": z.strictObject({ name: layoutName }),
  "watch.choose": nothing,
  "watch.start": z.strictObject({ folder: line(4096).min(1) }),
  "watch.stop": nothing,
  "watch.read": nothing,
  "watch.expect": z.strictObject({
    next: z.strictObject({
      test: test.exactOptional(),
      limb: limb.exactOptional(),
      dropHeightMetres: dropHeight.exactOptional(),
      leadingLeg: side.exactOptional(),
      practice: z.literal(true).exactOptional(),
    }),
  }),
  "recordings.answer": z.strictObject({ folder, files: z.array(file).min(1).max(10_000), answers, ...started }),
  "session.change": z.strictObject({ folder, change: sessionChange, ...started }),
  "cautions.add": z.strictObject({ folder, addition: cautionAdditionSchema }),
  "trials.change": z.strictObject({ folder, file, trial, change: trialChange, ...started }),
  "trials.keepOrExclude": z.strictObject({
    folder,
    trials: z.array(z.strictObject({ file, trial })).min(1).max(10_000),
    decision: trialChange.pick({ kept: true, excluded: true }),
  }),
  "trials.statePlates": z.strictObject({
    folder,
    files: z.array(file).min(1).max(10_000),
    feet: z.union([z.literal("swap"), side, statedPlates]),
    ...started,
  }),
  "trials.trace": z.strictObject({ folder, file, trial }),
  "sides.curves": z.strictObject({
    folder,
    test,
    legs: z.enum(["both", "single"]),
    alignedAt: z.enum(alignments),
    dropHeightMetres: dropHeight.exactOptional(),
    leadingLeg: side.exactOptional(),
  }),
  "sheet.read": z.strictObject({ folder }),
  "files.make": z.strictObject({ folder, format: z.enum(["pdf", "html", "csv", "json", "session"]) }),
  ...registerRequestSchemas,
} as const satisfies { readonly [Name in HostRequestName]: z.ZodType<HostApi[Name]["request"]> };

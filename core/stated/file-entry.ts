import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { readingStatements } from "../recording/reading-statements.ts";
import { eventEditSchema } from "./event-edit.ts";
import { dropHeight, limb, side, testKind, text } from "./schema-parts.ts";
import { statedPlateSchema } from "./stated-plate.ts";

/** Completes "… is expected". */
const expectedRelativePath = "a path inside the session's folder with forward slashes";

/** True for a path with forward slashes that stays inside its folder. */
export function isInsidePath(path: string): boolean {
  return !path.includes("\\") && path.split("/").every((part) => part !== "" && part !== "." && part !== "..");
}

/** What a person said about one file, or about one trial of it. Keys stand in the order of writing. */
export const fileEntrySchema = z.strictObject({
  /** Path relative to the session's folder, forward slashes. */
  file: text.refine(isInsidePath, expectedRelativePath),
  /** Counted from 1; absent: every trial of the file. */
  trial: z.int().min(1).exactOptional(),
  test: testKind.exactOptional(),
  limb: limb.exactOptional(),
  ...readingStatements,
  /** Excluded by a person, with a reason. */
  excluded: z.strictObject({ reason: text }).exactOptional(),
  /** Kept by a person in means although its weight differs from the session's. */
  kept: z.boolean().exactOptional(),
  /** A person has looked at the events of this trial. */
  seen: z.boolean().exactOptional(),
  /** A practice jump: always a landing, never an attempt and in no mean. */
  practice: z.boolean().exactOptional(),
  events: z.array(eventEditSchema).readonly().exactOptional(),
  /** Which foot stood on which force column in this file; stated by the tester, outranks the session's `plates`. */
  plates: z.array(statedPlateSchema).readonly().exactOptional(),
  /** Height of the box of drop jumps and drop landings; outranks the session's. */
  dropHeightMetres: dropHeight.exactOptional(),
  /** The leg that steps off the box first; outranks the session's. */
  leadingLeg: side.exactOptional(),
});

/** Which file, and which trial of it. */
const named = { file: true, trial: true } as const;
/** What a person decided about a trial, and where its events and feet are. */
const decided = { excluded: true, kept: true, seen: true, events: true, plates: true } as const;
const aboutReading = Object.fromEntries(Object.keys(readingStatements).map((name) => [name, true])) as {
  readonly [Name in keyof typeof readingStatements]: true;
};

/** What a trial is: everything an entry states that says neither how its file is read nor what was decided about it. */
export const trialStatementsSchema = fileEntrySchema.omit({ ...named, ...aboutReading, ...decided });

export type FileEntry = SchemaType<typeof fileEntrySchema>;

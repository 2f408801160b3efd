import { renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { preferencesLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { readUpTo } from "../bounded-json/read-up-to.ts";

const preferencesSchema = z.strictObject({
  /** Minutes without a sign of a person after which a register with a passphrase locks itself; 0: never. */
  lockAfterMinutes: z.int().min(0).max(720),
  /** The locked screen shows how many recordings of a watched folder came in; it names nothing. */
  countsWhileLocked: z.boolean().default(true),
  /** Random identifiers of the athletes opened last, the latest first. */
  recent: z.array(z.uuid()).readonly(),
});

/** What a person set on this computer; nothing of it is personal. */
export type Preferences = SchemaType<typeof preferencesSchema>;

const shippedPreferences: Preferences = { lockAfterMinutes: 15, countsWhileLocked: true, recent: [] };

/** Most athletes remembered as opened last. */
const mostRecent = 8;

/** The preferences of a data folder; the shipped ones where none can be read. */
export function readPreferences(folder: string): Preferences {
  try {
    const document = readUpTo(fileIn(folder), preferencesLimits.bytes);
    const parsed = preferencesSchema.safeParse(readJson(document, preferencesLimits));
    return parsed.success ? parsed.data : shippedPreferences;
  } catch {
    // None were written yet, or the file is not ours to read: every one of them can be set again.
    return shippedPreferences;
  }
}

/** Written whole or not at all. Where the folder is closed they last until the program ends. */
export function writePreferences(folder: string, preferences: Preferences): void {
  const partial = `${fileIn(folder)}.part`;
  try {
    writeFileSync(partial, `${JSON.stringify(preferences, null, 2)}\n`, { mode: 0o600 });
    renameSync(partial, fileIn(folder));
  } catch (error) {
    if (!(error instanceof Error && "code" in error)) throw error;
  }
}

/** The preferences after an athlete was opened. */
export function withRecent(preferences: Preferences, athlete: string): Preferences {
  const others = preferences.recent.filter((each) => each !== athlete);
  return { ...preferences, recent: [athlete, ...others].slice(0, mostRecent) };
}

/** The preferences after an athlete was erased. */
export function withoutRecent(preferences: Preferences, athlete: string): Preferences {
  return { ...preferences, recent: preferences.recent.filter((each) => each !== athlete) };
}

function fileIn(folder: string): string {
  return join(folder, "preferences.json");
}

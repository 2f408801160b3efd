import { draftFile } from "../../core/session/file-trials.ts";
import type { EarlierMass } from "../../core/session/mass-since-last.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { Register } from "../register/register.ts";
import type { SessionRecords } from "../register/register-views.ts";
import { descriptionOf } from "../register/session-conversion.ts";

/** So many recordings are weighed where nobody entered a mass. */
const mostWeighed = 3;
const dayMilliseconds = 86_400_000;

/** What recordings weighed, by their hashes: bytes do not change. */
const weighed = new Map<string, number | undefined>();

/**
 * Body mass of the last session the same athlete had before this one: entered, else weighed from its first recordings.
 * Undefined where there is none within the time that is asked about.
 */
export function earlierMass(register: Register, id: string): EarlierMass | undefined {
  const described = register.reads.describedSession(id);
  const date = described?.session.content.date;
  const athlete = described?.athlete;
  if (date === undefined || athlete === undefined) return undefined;
  const last = register.reads
    .athletePage(athlete.id)
    ?.sessions.filter(({ session }) => session.id !== id && isWithin(session.content.date, date))
    .at(-1);
  if (last?.session.content.date === undefined) return undefined;
  const { date: lastDate, massKg } = last.session.content;
  if (massKg !== undefined) return { date: lastDate, massKg, from: "entered" };
  const found = weighedMass(register, last);
  return found === undefined ? undefined : { date: lastDate, massKg: found, from: "weighed" };
}

function isWithin(earlier: string | undefined, date: string): boolean {
  if (earlier === undefined) return false;
  const days = (Date.parse(date) - Date.parse(earlier)) / dayMilliseconds;
  return days > 0 && days < defaultSettings.massChangeDays;
}

function weighedMass(register: Register, { session, recordings }: SessionRecords): number | undefined {
  const first = recordings.toSorted((a, b) => (a.content.path < b.content.path ? -1 : 1)).slice(0, mostWeighed);
  const key = first.map(({ content }) => content.sha256).join(" ");
  if (weighed.has(key)) return weighed.get(key);
  const described = register.reads.describedSession(session.id);
  const statements = {
    folder: "",
    description: described === undefined ? {} : descriptionOf(described),
    descriptionFindings: [],
    stated: {},
  };
  const masses = first
    .flatMap(({ content: { path, sha256 } }, index) => {
      const bytes = register.reads.recordingBytes(first[index]!);
      return draftFile({ path, sha256, bytes }, statements, defaultSettings).weighed;
    })
    .flatMap(({ own }) => own?.newtons ?? [])
    .toSorted((a, b) => a - b);
  const median = masses[masses.length >> 1];
  const found = median === undefined ? undefined : median / defaultSettings.gravity;
  weighed.set(key, found);
  return found;
}

import { type Finding, proseFinding } from "../../core/ground/finding.ts";
import { isMeasureId } from "../../core/ground/measures/catalogue.ts";
import { involvedSideAt, otherInjuriesAt, type RecordedInjury } from "../../core/sides/involvement.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import { type EffusionGrade, effusionGrades } from "../../core/stated/gate-words.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { WrittenFinding } from "../../core/words/written-finding.ts";
import { earlierAnswers } from "./earlier-cautions.ts";
import { operationAt } from "./operation-at.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { StoredRecord } from "./record-tables.ts";
import type { SessionRecords } from "./register-views.ts";
import { withAdded } from "./with-added.ts";

/** Entries a session's record shares with `session.json` under the same names. */
const sharedKeys = [
  "date",
  "milestone",
  "massKg",
  "gravity",
  "protocol",
  "involved",
  "injury",
  "otherInjuries",
  "dropHeightMetres",
  "leadingLeg",
  "plates",
  "readings",
  "stopped",
  "gateOpenings",
  "limits",
  "simulated",
  "note",
  "references",
] as const satisfies readonly (keyof SessionDescription & keyof RecordContent<"sessions">)[];

/** What an athlete's record says in the words of `session.json`. */
export function describedAthlete(athlete: RecordContent<"athletes">): NonNullable<SessionDescription["athlete"]> {
  const { code, name, sex, birthYear, birthDate, sport, level } = athlete;
  const year = birthYear ?? (birthDate === undefined ? undefined : Number(birthDate.slice(0, 4)));
  return {
    code,
    ...(name !== undefined && { name }),
    ...(sex !== undefined && { sex }),
    ...(year !== undefined && { birthYear: year }),
    ...(sport !== undefined && { sport }),
    ...(level !== undefined && { level }),
  };
}

/** The records behind one session. */
export interface DescribedSession extends SessionRecords {
  readonly athlete?: StoredRecord<"athletes">;
  /** Of the athlete; they say which side is involved, and which injuries are not, where the session itself does not. */
  readonly injuriesAndOperations: readonly RecordedInjury[];
  readonly operations: readonly RecordContent<"operations">[];
}

/** What was stated about a session, as the analysis takes it. */
export function descriptionOf(described: DescribedSession): SessionDescription {
  const { content } = described.session;
  const athlete = content.athleteAsStated ?? (described.athlete && describedAthlete(described.athlete.content));
  const shared = Object.fromEntries(
    sharedKeys.filter((key) => content[key] !== undefined).map((key) => [key, content[key]]),
  ) as Pick<SessionDescription, (typeof sharedKeys)[number]>;
  const { injuriesAndOperations } = described;
  const nobodyInjured = described.athlete?.content.nobodyInjured !== undefined;
  const involved = content.involved ?? involvedSideAt(injuriesAndOperations, content.date, nobodyInjured);
  const recorded = otherInjuriesAt(injuriesAndOperations, content.date);
  const otherInjuries = content.otherInjuries ?? (recorded.length > 0 ? recorded : undefined);
  const pain = worstPain(content.pain);
  const effusion = worstEffusion(content.effusion);
  const cautions = describedCautions(content);
  const operation = content.operation ?? operationAt(described.operations, involved, content.date);
  const files = entriesOf(described);
  return {
    ...(athlete && { athlete }),
    ...shared,
    ...(involved !== undefined && { involved }),
    ...(otherInjuries !== undefined && { otherInjuries }),
    ...(pain !== undefined && { pain }),
    ...(effusion !== undefined && { effusion }),
    ...(operation !== undefined && { operation }),
    ...(cautions !== undefined && { cautions }),
    ...(files.length > 0 && { files }),
  };
}

/** A session's record that says what a description says; what a description cannot say stays as it was. */
export function sessionContent(
  before: RecordContent<"sessions">,
  description: SessionDescription,
  athlete: RecordContent<"athletes"> | undefined,
  otherEntries: NonNullable<RecordContent<"sessions">["otherEntries"]>,
): RecordContent<"sessions"> {
  const replaced = new Set<string>([
    ...sharedKeys,
    "pain",
    "effusion",
    "cautions",
    "cautionAnswers",
    "athleteAsStated",
    "otherEntries",
  ]);
  const kept = Object.entries(before).filter(([key]) => !replaced.has(key));
  const shared = sharedKeys.map((key) => [key, description[key]] as const).filter(([, value]) => value !== undefined);
  const stated = description.athlete;
  const differs = stated !== undefined && !sameEntries(stated, athlete && describedAthlete(athlete));
  const pain = statedNow(before.pain, worstPain(before.pain), description.pain, "during");
  const effusion = statedNow(before.effusion, worstEffusion(before.effusion), description.effusion, "before");
  const cautions = cautionsWith(before.cautions, description.cautions);
  const earlier = earlierAnswers(before.cautions);
  const answers = (description.cautions?.answers ?? []).filter((each) => !isAmong(each, earlier));
  return withAdded(before, {
    ...(Object.fromEntries(kept) as RecordContent<"sessions">),
    ...(Object.fromEntries(shared) as Partial<RecordContent<"sessions">>),
    ...(pain && { pain }),
    ...(effusion && { effusion }),
    ...(cautions.length > 0 && { cautions }),
    ...(answers.length > 0 && { cautionAnswers: answers }),
    ...(differs && { athleteAsStated: stated }),
    ...(otherEntries.length > 0 && { otherEntries }),
  });
}

/** What was said of one recording and of its trials, from the entries of a description. */
export interface StatedFiles {
  readonly whole: ReadonlyMap<string, { readonly stated: FileStatement; readonly position: number }>;
  readonly trials: readonly {
    readonly path: string;
    readonly number: number;
    readonly stated: FileStatement;
    readonly position: number;
  }[];
  readonly others: NonNullable<RecordContent<"sessions">["otherEntries"]>;
}

type FileStatement = RecordContent<"trials">["stated"];

/** Sorts the entries of a description to the recordings and trials they speak of; places count upward from 0. */
export function statedFiles(entries: readonly FileEntry[], paths: ReadonlySet<string>): StatedFiles {
  const whole = new Map<string, { stated: FileStatement; position: number }>();
  const trials = new Map<string, StatedFiles["trials"][number]>();
  const others: StatedFiles["others"][number][] = [];
  for (const [position, entry] of entries.entries()) {
    const { file, trial, ...stated } = entry;
    const key = `${file} ${trial}`;
    if (!paths.has(file)) others.push({ position, entry });
    else if (trial === undefined && !whole.has(file)) whole.set(file, { stated, position });
    else if (trial !== undefined && !trials.has(key)) trials.set(key, { path: file, number: trial, stated, position });
    else others.push({ position, entry });
  }
  return { whole, trials: [...trials.values()], others };
}

/** The findings made when the session's own file was read. */
export function readingFindingsOf(session: StoredRecord<"sessions">): readonly Finding[] {
  // They were findings of the core when they were stored, and are kept as they then read.
  const kept = (session.content.readingFindings ?? []) as readonly WrittenFinding[];
  return kept.map(({ code, severity, message, action, ...parts }) =>
    proseFinding(code, severity, message, action, { where: parts.where, removes: parts.removes.filter(isMeasureId) }),
  );
}

function entriesOf({ session, recordings, trials }: SessionRecords): readonly FileEntry[] {
  const paths = new Map(recordings.map(({ id, content }) => [id, content.path]));
  const placed: { readonly position: number; readonly entry: FileEntry }[] = [...(session.content.otherEntries ?? [])];
  for (const { content } of recordings) {
    if (content.position === undefined) continue;
    placed.push({ position: content.position, entry: { file: content.path, ...content.stated } });
  }
  for (const { content, references } of trials) {
    const file = paths.get(references.recording ?? "");
    if (file === undefined || content.position === undefined) continue;
    placed.push({ position: content.position, entry: { file, trial: content.number, ...content.stated } });
  }
  return placed.toSorted((first, second) => first.position - second.position).map(({ entry }) => entry);
}

/** The day's worst pain; the next day's is another day. */
function worstPain(pain: RecordContent<"sessions">["pain"]): number | undefined {
  const stated = [pain?.before, pain?.during, pain?.after].filter((each) => each !== undefined);
  return stated.length > 0 ? Math.max(...stated) : undefined;
}

/** The day's worst effusion; the next day's is another day. */
function worstEffusion(effusion: RecordContent<"sessions">["effusion"]): EffusionGrade | undefined {
  const stated = [effusion?.before, effusion?.during, effusion?.after].filter((each) => each !== undefined);
  return effusionGrades.findLast((grade) => stated.includes(grade));
}

type Moments<Value> = {
  readonly before?: Value;
  readonly during?: Value;
  readonly after?: Value;
  readonly nextDay?: Value;
};

/** The moments of a day after its worst was stated anew; the same statement leaves every moment as it was. */
function statedNow<Value>(
  before: Moments<Value> | undefined,
  worst: Value | undefined,
  stated: Value | undefined,
  moment: "before" | "during",
): Moments<Value> | undefined {
  if (stated === worst) return before;
  const nextDay = before?.nextDay === undefined ? {} : { nextDay: before.nextDay };
  const now = stated === undefined ? nextDay : { [moment]: stated, ...nextDay };
  return Object.keys(now).length > 0 ? now : undefined;
}

type Cautions = NonNullable<RecordContent<"sessions">["cautions"]>;

function cautionsWith(before: Cautions = [], stated: SessionDescription["cautions"]): Cautions {
  const others = before.filter((each) => each.before !== "session");
  if (stated === undefined) return others;
  const { answeredBy, date, note } = stated;
  if (answeredBy === undefined || date === undefined) return others;
  const known = before.find((each) => each.before === "session");
  const { note: _note, ...rest } = known ?? { before: "session" as const };
  return [{ ...rest, answeredBy, date, ...(note !== undefined && { note }) }, ...others];
}

/** Who was asked, and every answer, those of earlier versions first; undefined where the record has neither. */
function describedCautions(content: RecordContent<"sessions">): SessionDescription["cautions"] {
  const asked = content.cautions?.find((each) => each.before === "session");
  const answers = [...earlierAnswers(content.cautions), ...(content.cautionAnswers ?? [])];
  if (asked === undefined && answers.length === 0) return undefined;
  return {
    ...(asked !== undefined && { answeredBy: asked.answeredBy, date: asked.date }),
    ...(asked?.note !== undefined && { note: asked.note }),
    ...(answers.length > 0 && { answers }),
  };
}

function isAmong(each: object, others: readonly object[]): boolean {
  return others.some((other) => JSON.stringify(other) === JSON.stringify(each));
}

function sameEntries(some: object, others: object | undefined): boolean {
  if (others === undefined) return false;
  const text = (value: object) => JSON.stringify(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)));
  return text(some) === text(others);
}

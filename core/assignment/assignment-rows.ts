import type { FindingCode } from "../ground/finding-codes.ts";
import type { Limb, Side } from "../ground/limb.ts";
import { mayBeVariant, startsFromBox, type TestKind } from "../ground/test-kind.ts";
import type { FileReading } from "../recording/file-reading.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { entryOf } from "../session/session-entries.ts";
import { sameBoxHeight } from "../sides/box-height.ts";
import type { FileEntry } from "../stated/file-entry.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";
import { type AssignmentOffers, assignmentOffers, type Offer } from "./assignment-offers.ts";

/** One thing a trial is, where that comes from, and what else it may be. */
export interface AssignedCell<Value> {
  /** Absent while nobody and nothing says it. */
  readonly value?: Value;
  /** "stated", "file name", "loaded plate", "stated for the session"; "" without a value. */
  readonly from: string;
  /** Other values that something offers. */
  readonly offers: readonly Offer<Value>[];
  /** True where it would mean something for this trial. */
  readonly applies: boolean;
}

/** One row of the assignment: a file, or a trial where a file has several. */
export interface AssignmentRow {
  readonly file: string;
  /** Absent where the file has no more than one trial: what is stated then holds for the file. */
  readonly trial?: number;
  readonly test: AssignedCell<TestKind>;
  readonly limb: AssignedCell<Limb>;
  readonly dropHeightMetres: AssignedCell<number>;
  readonly leadingLeg: AssignedCell<Side>;
  /** A person called it a practice jump. */
  readonly practice: boolean;
  /** What the trace or the header says against the assignment, a sentence each. */
  readonly contradictions: readonly string[];
}

/** A file of the session with what was understood of it. */
export interface AssignedFile {
  readonly file: string;
  readonly reading?: FileReading;
}

const contradicting: ReadonlySet<FindingCode> = new Set<FindingCode>([
  "test-contradicts",
  "leading-leg-contradicted",
  "plates-contradict",
  "drop-height-off",
  "dip-in-squat-jump",
]);

/** What every trial of a session is taken for, and why, in the order of the files. */
export function assignmentRows(session: SessionResult, files: readonly AssignedFile[]): readonly AssignmentRow[] {
  const ofFile = new Map<string, TrialResult[]>();
  for (const trial of session.trials) ofFile.set(trial.file, [...(ofFile.get(trial.file) ?? []), trial]);
  return files.flatMap((file) => {
    const trials = ofFile.get(file.file) ?? [];
    return trials.map((trial) => rowOf(session, file, trial, trials.length > 1));
  });
}

function rowOf(
  { description, folder }: SessionResult,
  { file, reading }: AssignedFile,
  trial: TrialResult,
  isOneOfSeveral: boolean,
): AssignmentRow {
  const { recognised, test, limb } = trial;
  const offers = assignmentOffers({
    file,
    folder,
    ...(reading === undefined ? {} : { reading }),
    ...(recognised === undefined || mayBeVariant(recognised.test, test) ? {} : { recognised }),
  });
  const entry = entryOf(description, file, trial.trial);
  const fromBox = test === undefined || startsFromBox(test);
  const boxFrom = entry.dropHeightMetres === undefined ? "stated for the session" : "stated";
  const leadFrom = entry.leadingLeg === undefined ? "stated for the session" : "stated";
  return {
    file,
    ...(isOneOfSeveral ? { trial: trial.trial } : {}),
    test: cell(test, entry.test === undefined ? "file name" : "stated", offers.test, true),
    limb: limbCell(trial, limbFrom(entry, offers), offers.limb),
    dropHeightMetres: cell(trial.dropHeightMetres, boxFrom, offers.dropHeightMetres, fromBox, sameBoxHeight),
    leadingLeg: cell(trial.leadingLeg, leadFrom, offers.leadingLeg, fromBox && (limb === undefined || limb === "both")),
    practice: trial.practice === true,
    contradictions: [
      ...trial.findings.flatMap((each) =>
        contradicting.has(each.code) ? [findingInWords(each, english).message] : [],
      ),
      ...otherAthlete(offers, description.athlete),
    ],
  };
}

/** A leg that only the name of the loaded plate tells is a question: nothing proves which foot stood on that plate. */
function limbCell({ limb, feet }: TrialResult, from: string, offers: AssignmentOffers["limb"]): AssignedCell<Limb> {
  if (limb === undefined || limb === "both" || feet !== "unproved") return cell(limb, from, offers, true);
  const others = offers.filter((each) => each.from !== from);
  return cell<Limb>(undefined, "", [{ value: limb, from: "name of the loaded plate" }, ...others], true);
}

function limbFrom(entry: Partial<FileEntry>, offers: AssignmentOffers): string {
  if (entry.limb !== undefined) return "stated";
  return offers.limb.some((each) => each.from === "file name") ? "file name" : "loaded plate";
}

function cell<Value>(
  value: Value | undefined,
  from: string,
  offers: readonly Offer<Value>[],
  applies: boolean,
  isSame: (one: Value, other: Value) => boolean = (one, other) => one === other,
): AssignedCell<Value> {
  const others = applies ? offers.filter((each) => value === undefined || !isSame(value, each.value)) : [];
  return { ...(value === undefined ? {} : { value }), from: value === undefined ? "" : from, offers: others, applies };
}

/** A header that names somebody whose session this is not. */
function otherAthlete(
  { athlete: named }: AssignmentOffers,
  athlete: { readonly code: string; readonly name?: string } | undefined,
): readonly string[] {
  if (athlete === undefined) return [];
  const known = [athlete.code, athlete.name ?? athlete.code].map(plain);
  return named
    .filter(({ value }) => !known.includes(plain(value)))
    .map(({ value, from }) => `The file names “${value}” (${from}); the session is that of ${athlete.code}.`);
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** A change of one row; the names are those of an entry of session.json. */
export type RowChange = Pick<AssignmentRow, "file" | "trial"> &
  Partial<Pick<FileEntry, "test" | "limb" | "dropHeightMetres" | "leadingLeg">>;

/** What would be stated by taking every offer that fills a gap; a gap with two different offers stays open. */
export function acceptedOffers(rows: readonly AssignmentRow[]): readonly RowChange[] {
  return rows.flatMap((row) => {
    const taken = {
      ...only("test", row.test),
      ...only("limb", row.limb),
      ...only("dropHeightMetres", row.dropHeightMetres),
      ...only("leadingLeg", row.leadingLeg),
    };
    return Object.keys(taken).length === 0 ? [] : [{ ...placeOf(row), ...taken }];
  });
}

/** What would be stated by giving the other rows everything the first one is taken for. */
export function filledDown([first, ...others]: readonly AssignmentRow[]): readonly RowChange[] {
  if (first === undefined) return [];
  const { test, limb, dropHeightMetres, leadingLeg } = first;
  const values = {
    ...(test.value === undefined ? {} : { test: test.value }),
    ...(limb.value === undefined ? {} : { limb: limb.value }),
    ...(dropHeightMetres.value === undefined ? {} : { dropHeightMetres: dropHeightMetres.value }),
    ...(leadingLeg.value === undefined ? {} : { leadingLeg: leadingLeg.value }),
  };
  return Object.keys(values).length === 0 ? [] : others.map((row) => ({ ...placeOf(row), ...values }));
}

/** Names the row. */
export function placeOf({ file, trial }: AssignmentRow): Pick<AssignmentRow, "file" | "trial"> {
  return { file, ...(trial === undefined ? {} : { trial }) };
}

function only<Name extends string, Value>(name: Name, { value, offers }: AssignedCell<Value>): object {
  const [offered, ...more] = offers;
  return value === undefined && offered !== undefined && more.length === 0 ? { [name]: offered.value } : {};
}

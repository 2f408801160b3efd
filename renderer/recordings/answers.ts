import type { FindingCode } from "../../core/ground/finding-codes.ts";
import { type Limb, oppositeSide } from "../../core/ground/limb.ts";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { ForceUnit } from "../../core/recording/force-units.ts";
import { isSameShape } from "../../core/recording/same-shape.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { RecordingAnswers } from "../../electron/boundary/stated-changes.ts";
import type { RecordingView } from "../../electron/boundary/workspace-view.ts";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;

/** What a column may be stated to be. */
export const columnRoles = ["unused", "time", "left", "right", "total"] as const;

export type ColumnRole = (typeof columnRoles)[number];

export const forceUnits: readonly ForceUnit[] = ["N", "kN", "kgf", "lbf"];

export const limbs: readonly Limb[] = ["both", "left", "right"];

/** A question of the form. */
export type Question = "test" | "limb" | "rate" | "unit" | "columns" | "decimalMark" | "mass" | "resample";

const questionOfCode: Readonly<Partial<Record<FindingCode, Question>>> = {
  "test-not-stated": "test",
  "limb-not-stated": "limb",
  "rate-missing": "rate",
  "rate-contradicts": "rate",
  "unit-not-stated": "unit",
  "unit-contradicts": "unit",
  "weight-implausible": "unit",
  "columns-unclear": "columns",
  "decimal-mark-unclear": "decimalMark",
  "mass-missing": "mass",
  "time-uneven": "resample",
};

/** What the file's refusals ask for. */
export function askedQuestions(view: RecordingView): ReadonlySet<Question> {
  const refusals = view.findings.filter((each) => each.severity === "refusal");
  return new Set(refusals.flatMap((each) => questionOfCode[each.code] ?? []));
}

type ReadColumn = FileReading["columns"][number];

/** How a column was read, in the words of the form; "unclear" where nothing tells what or whose it is. */
export function readRole({ role, limb, confidence }: ReadColumn): ColumnRole | "unclear" {
  if (role === "time") return role;
  if (role === "unused") return confidence === "unclear" ? "unclear" : "unused";
  if (limb === undefined) return "unclear";
  return limb === "both" ? "total" : limb;
}

/**
 * The statement about all columns once one of them is given another role. Two columns of one foot are added; where one
 * of two unclear columns is given a foot, the other belongs to the other foot.
 */
export function columnsAnswer(
  columns: readonly ReadColumn[],
  position: number,
  role: ColumnRole,
): NonNullable<RecordingAnswers["columns"]> {
  const before = columns.map((column) => ({ position: column.position, role: readRole(column) }));
  const unknown = before.filter((each) => each.role === "unclear" && each.position !== position);
  const roles = before.map((each): { readonly position: number; readonly role: ColumnRole | "unclear" } => {
    if (each.position === position) return { position, role };
    if (role === "time" && each.role === "time") return { ...each, role: "unused" };
    const isOther = (role === "left" || role === "right") && unknown.length === 1 && each.role === "unclear";
    return isOther ? { ...each, role: oppositeSide(role) } : each;
  });
  const of = (wanted: ColumnRole) => roles.filter((each) => each.role === wanted).map((each) => each.position);
  const had = before.some((each) => each.role === "time");
  const time = of("time")[0] ?? (had ? "none" : undefined);
  return {
    ...(time === undefined ? {} : { time }),
    ...named("left", of("left")),
    ...named("right", of("right")),
    ...named("total", of("total")),
  };
}

function named(role: "left" | "right" | "total", positions: readonly number[]): object {
  const [only] = positions;
  if (only === undefined) return {};
  return { [role]: positions.length === 1 ? only : positions.join("+") };
}

/** A rate as it was written, hertz; a sentence where it cannot be meant, `null` where the field was emptied. */
export function rateFrom(written: string): { readonly rateHz: number | null } | { readonly problem: string } {
  if (written.trim() === "") return { rateHz: null };
  const rateHz = Number(written.trim().replace(",", "."));
  return rateHz >= 1 && rateHz <= 1_000_000 ? { rateHz } : { problem: prose.rateIsANumber };
}

/** What was stated about a file as a whole. */
export function statedAbout({ files }: SessionDescription, file: string): Partial<FileEntry> {
  return files?.find((entry) => entry.file === file && entry.trial === undefined) ?? {};
}

/** True for files of one shape: an answer about the columns of one is an answer about those of the other. */
export function isSameKind(one: RecordingView, other: RecordingView): boolean {
  const [reading, read] = [one.reading, other.reading];
  if (reading?.kind === "delimited" && read?.kind === "delimited") return isSameShape(reading.shape, read.shape);
  return reading?.kind === "c3d" && read?.kind === "c3d" && reading.columns.length === read.columns.length;
}

import type { FindingCode } from "../../core/finding.ts";
import type { Limb } from "../../core/limb.ts";
import type { TableReading } from "../../core/recording/request.ts";
import type { ForceUnit } from "../../core/session.ts";
import { availableTests } from "../../core/test-kind.ts";
import type { RecordingAnswers, RecordingView } from "../../electron/host-api.ts";
import { boxHeightFrom } from "./box-height.ts";

/** What a column may be stated to be. */
export const columnRoles = ["unused", "time", "left", "right", "total"] as const;

export type ColumnRole = (typeof columnRoles)[number];

export const forceUnits: readonly ForceUnit[] = ["N", "kN", "kgf", "lbf"];

export const limbs: readonly Limb[] = ["both", "left", "right"];

/** The form as written: empty texts are left as they are. */
export interface WrittenAnswers {
  readonly test: string;
  readonly limb: string;
  readonly rate: string;
  readonly unit: string;
  /** Height of the box, metres. */
  readonly boxHeight: string;
  readonly leadingLeg: string;
  /** The role of each column, by position from 1; absent: as it was read. */
  readonly roles: ReadonlyMap<number, ColumnRole>;
}

export const nothingWritten: WrittenAnswers = {
  test: "",
  limb: "",
  rate: "",
  unit: "",
  boxHeight: "",
  leadingLeg: "",
  roles: new Map(),
};

/** A question of the form. */
export type Question = "test" | "limb" | "rate" | "unit" | "columns";

const questionOfCode: Readonly<Partial<Record<FindingCode, Question>>> = {
  "test-not-stated": "test",
  "limb-not-stated": "limb",
  "rate-missing": "rate",
  "unit-not-stated": "unit",
  "columns-unclear": "columns",
};

/** What the file's findings ask for. */
export function askedQuestions(view: RecordingView): ReadonlySet<Question> {
  return new Set(view.findings.flatMap((each) => questionOfCode[each.code] ?? []));
}

/** How a column was read, in the words of the form. */
export function readRole(column: TableReading["columns"][number]): ColumnRole {
  if (column.role === "time") return "time";
  if (column.role === "unused") return "unused";
  return column.limb === "left" || column.limb === "right" ? column.limb : "total";
}

/**
 * What the form says, ready for the host; a sentence where it cannot be meant.
 * @param columns the columns as they were read; their roles are sent as a whole once one of them was changed
 */
export function answersFrom(
  written: WrittenAnswers,
  columns: TableReading["columns"],
): { readonly answers: RecordingAnswers } | { readonly problem: string } {
  const rateHz = Number(written.rate.replace(",", "."));
  if (written.rate.trim() !== "" && !(rateHz >= 1))
    return { problem: "The rate must be a number of samples a second." };
  const roles = columns.map((column) => ({
    position: column.position,
    role: written.roles.get(column.position) ?? readRole(column),
  }));
  for (const role of columnRoles) {
    if (role !== "unused" && roles.filter((each) => each.role === role).length > 1) {
      return { problem: `Only one column can be ${role}.` };
    }
  }
  const box = boxHeightFrom(written.boxHeight);
  if (written.boxHeight.trim() !== "" && "problem" in box) return box;
  const test = availableTests.find((each) => each === written.test);
  const limb = limbs.find((each) => each === written.limb);
  const unit = forceUnits.find((each) => each === written.unit);
  const stated = roles.filter((each) => each.role !== "unused").map((each) => [each.role, each.position]);
  const answers: RecordingAnswers = {
    ...(test === undefined ? {} : { test }),
    ...(limb === undefined ? {} : { limb }),
    ...(written.rate.trim() === "" ? {} : { rateHz }),
    ...(unit === undefined ? {} : { unit }),
    ...(written.boxHeight.trim() !== "" && "metres" in box ? { dropHeightMetres: box.metres } : {}),
    ...(written.leadingLeg === "left" || written.leadingLeg === "right" ? { leadingLeg: written.leadingLeg } : {}),
    ...(written.roles.size === 0 ? {} : { columns: Object.fromEntries(stated) }),
  };
  return Object.keys(answers).length === 0 ? { problem: "Nothing was stated yet." } : { answers };
}

import type { Limb } from "../ground/limb.ts";
import type { Status } from "../ground/status.ts";

/** A cell of a table on the sheet, already worded. `limb` asks for the limb's colour and line form. */
export interface SheetCell {
  readonly text: string;
  /** Shown behind the text in muted ink: a unit, an uncertainty, a date. */
  readonly muted?: string;
  readonly align: "start" | "end";
  readonly emphasis?: "strong" | "muted";
  readonly limb?: "involved" | "uninvolved" | Limb;
  /** A status word with its drawn mark. */
  readonly status?: Status;
}

/** A column of a table on the sheet. */
export interface SheetColumn {
  readonly text: string;
  readonly align: "start" | "end";
  readonly wide?: boolean;
  readonly limb?: "involved" | "uninvolved" | Limb;
}

/** The symmetry drawing of one row: the index on a line. All in per cent. */
export interface SymmetryLine {
  readonly index: number;
  readonly thick?: { readonly low: number; readonly high: number };
  readonly thin?: { readonly low: number; readonly high: number };
  readonly threshold?: number;
  /** Drawn in the involved limb's colour; in ink where absent. */
  readonly limb?: "involved";
}

/** One block of the sheet, in reading order. */
export type SheetBlock =
  | { readonly kind: "heading"; readonly level: 2 | 3; readonly text: string }
  | { readonly kind: "paragraph"; readonly text: string; readonly tone: "plain" | "muted" | "caution" }
  | { readonly kind: "list"; readonly tone: "plain" | "muted"; readonly items: readonly string[] }
  | {
      readonly kind: "facts";
      /** `wide` facts take a line of their own. */
      readonly items: readonly { readonly name: string; readonly value: string; readonly wide?: true }[];
    }
  | {
      readonly kind: "table";
      readonly caption: string;
      /** The heading above says as much: the caption is there for those who cannot see it. */
      readonly captionUnseen?: true;
      /** `wide` columns share the width that the others leave. `limb` as in the cells below it. */
      readonly columns: readonly SheetColumn[];
      readonly rows: readonly { readonly cells: readonly SheetCell[]; readonly line?: SymmetryLine }[];
      /**
       * Present when rows carry a symmetry line: the range of the drawn axis in per cent. The lines stand in a column
       * of their own in front of the last one; `label` is its heading.
       */
      readonly axis?: { readonly low: number; readonly high: number; readonly label: string };
    }
  /** Empty lines to write on by hand, each behind its name. */
  | { readonly kind: "write-in"; readonly items: readonly { readonly name: string; readonly lines: number }[] }
  | { readonly kind: "page-break" };

/** The testing sheet: everything a reader sees, already worded and ordered. Every route draws this one document. */
export interface SheetDocument {
  readonly title: string;
  readonly subtitle: string;
  /** ISO language tag of the text. */
  readonly language: "en";
  /** Said on every page ("Simulated recordings of an invented athlete."); empty for real ones. */
  readonly banner: string;
  readonly blocks: readonly SheetBlock[];
  /** One line at the foot of every page: version, settings hash, sources. */
  readonly footer: string;
}

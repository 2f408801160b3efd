import type { Limb, Side } from "../limb.ts";
import type { NamedColumn, StatementSource } from "./file-parts.ts";

/** The figures of what is found about the columns of a table and its rows. */
export interface ColumnFindings {
  /** Saved layouts that fit a file and say different things. */
  readonly "layout-unclear/several-fit": { readonly names: readonly string[] };
  readonly "layout-unclear/little-known": { readonly name: string };

  /** What a person stated about columns and the file does not hold. */
  readonly "columns-unclear/name-twice": { readonly key: string; readonly positions: readonly number[] };
  readonly "columns-unclear/no-such-column": { readonly key: string; readonly columns: readonly NamedColumn[] };
  readonly "columns-unclear/text": { readonly column: NamedColumn };
  readonly "columns-unclear/stated-twice": { readonly position: number };
  readonly "columns-unclear/time-summed": Readonly<Record<never, never>>;

  /** What the columns' names leave open. */
  readonly "columns-unclear/no-numbers": { readonly column: NamedColumn };
  readonly "columns-unclear/several-totals": { readonly columns: readonly NamedColumn[] };
  readonly "columns-unclear/sideways": { readonly vertical: NamedColumn; readonly loaded: NamedColumn };
  readonly "columns-unclear/several-of-side": { readonly side: Side; readonly columns: readonly NamedColumn[] };
  readonly "columns-unclear/unexplained": { readonly columns: readonly NamedColumn[] };
  readonly "columns-unclear/no-force": Readonly<Record<never, never>>;
  /** Plates without feet, and the column among them that is the sum of the others. */
  readonly "columns-unclear/which-plate": {
    readonly columns: readonly NamedColumn[];
    readonly sum?: NamedColumn;
    readonly isPair: boolean;
  };

  readonly "plates-swapped/no-foot": Readonly<Record<never, never>>;
  /** What each foot's columns are once exchanged. */
  readonly "plates-swapped/exchanged": {
    readonly left: readonly NamedColumn[];
    readonly right: readonly NamedColumn[];
  };
  readonly "time-left-out": { readonly column: NamedColumn; readonly source: StatementSource };

  readonly "cells-unreadable/no-row": Readonly<Record<never, never>>;
  /** The first cells of all that hold no number; `text` is "" for an empty one. */
  readonly "cells-unreadable/inside": {
    readonly cells: readonly { readonly line: number; readonly column: NamedColumn; readonly text: string }[];
    readonly count: number;
  };
  readonly "cells-unreadable/ends": {
    readonly rowsAtStart: number;
    readonly rowsAtEnd: number;
    readonly firstLine: number;
  };

  readonly "plates-summed": { readonly limb: Limb; readonly names: readonly string[] };
  readonly "plate-derived": { readonly limb: Limb; readonly total: string; readonly side: string };
  readonly "columns-disagree/sum": { readonly total: string; readonly newtons: number };
  /** Two clocks of one file, the used one last. */
  readonly "columns-disagree/clocks-drift": ClocksApart;
  readonly "columns-disagree/clocks-apart": ClocksApart;
}

interface ClocksApart {
  readonly other: NamedColumn;
  readonly used: NamedColumn;
  readonly seconds: number;
}

import type { NamedColumn } from "./findings/file-parts.ts";

/** Where in a file, a recording or a session a finding is. */
export type Place =
  /** It concerns the whole. */
  | { readonly at: "whole" }
  /** A line of a text file, from 1. */
  | { readonly at: "line"; readonly line: number }
  /** A byte of a file, from 1. */
  | { readonly at: "byte"; readonly byte: number }
  | { readonly at: "whole file" }
  | { readonly at: "whole document" }
  | { readonly at: "end of the file" }
  /** Force platforms by their numbers, of which the file says nothing more. */
  | { readonly at: "platforms"; readonly first: number; readonly last: number }
  /** A frame of a C3D file, from 1. */
  | { readonly at: "frame"; readonly frame: number }
  | { readonly at: "time column" }
  /** Columns by their names, or by their place where they have none, in the order of the file. */
  | { readonly at: "columns"; readonly names: readonly string[] }
  /** A column by its place and its name. */
  | { readonly at: "column"; readonly column: NamedColumn }
  /** Columns of which each is meant for itself. */
  | { readonly at: "each column"; readonly names: readonly string[] }
  /** Seconds from the first sample, to so many decimals. */
  | { readonly at: "time"; readonly seconds: number; readonly decimals: number }
  | { readonly at: "times"; readonly seconds: readonly number[]; readonly decimals: number }
  | { readonly at: "span"; readonly fromSeconds: number; readonly toSeconds: number; readonly decimals: number }
  /** The same, on a plate by its name. */
  | {
      readonly at: "plate span";
      readonly plate: string;
      readonly fromSeconds: number;
      readonly toSeconds: number;
      readonly decimals: number;
    }
  /** Single samples of plates, and so many more. */
  | {
      readonly at: "samples";
      readonly samples: readonly { readonly plate: string; readonly seconds: number }[];
      readonly more: number;
    }
  /** Plates by their names. */
  | { readonly at: "plates"; readonly names: readonly string[] }
  /** Names that stand in the file: of a plate, a platform, a file. */
  | { readonly at: "name"; readonly name: string }
  | { readonly at: "names"; readonly names: readonly string[] }
  | { readonly at: "trial"; readonly trial: number }
  | { readonly at: "words"; readonly words: string };

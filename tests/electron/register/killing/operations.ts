/** The passphrases in play: none of them is ever in two roles. */
export const words = {
  first: "nine grey geese",
  second: "seven black swans",
  other: "four white herons",
  sealed: "eleven brown owls",
} as const;

/** The registers that rounds begin with; `make-beginnings.ts` makes them. */
export const beginnings = [
  "plain",
  "protected",
  "schema 1",
  "schema 2",
  "schema 3",
  "schema 1 under a passphrase",
  "schema 2 under a passphrase",
  "schema 3 under a passphrase",
] as const;

export type Beginning = (typeof beginnings)[number];

/** What the program under test does until it is killed. */
export type Work =
  | "import"
  | "edit"
  | "erase"
  | "set passphrase"
  | "remove passphrase"
  | "restore kept"
  | "restore plain"
  | "restore sealed"
  | "restore other"
  | "open"
  | "back up daily"
  | "back up elsewhere"
  | "back up sealed";

export interface Operation {
  readonly name: string;
  readonly begins: Beginning;
  readonly work: Work;
  /** The passphrase before and after it; undefined for none. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}

const plain = { begins: "plain", before: undefined, after: undefined } as const;
const kept = { begins: "protected", before: words.first, after: words.first } as const;
const both = (name: string, work: Work): readonly Operation[] => [
  { name, work, ...plain },
  { name: `${name}, under a passphrase`, work, ...kept },
];

/** Every operation whose promise a kill could break. */
export const operations: readonly Operation[] = [
  ...both("import", "import"),
  ...both("edit", "edit"),
  ...both("erase", "erase"),
  { name: "protect", work: "set passphrase", ...plain, after: words.second },
  { name: "change the passphrase", work: "set passphrase", ...kept, after: words.second },
  { name: "unprotect", work: "remove passphrase", ...kept, after: undefined },
  ...both("restore a kept backup", "restore kept"),
  { name: "restore a plain copy, under a passphrase", work: "restore plain", ...kept },
  { name: "restore a sealed plain copy, under a passphrase", work: "restore sealed", ...kept },
  { name: "restore a copy under another passphrase, under a passphrase", work: "restore other", ...kept },
  { name: "restore a copy under a passphrase", work: "restore other", ...plain, after: words.other },
  ...[1, 2, 3].map(
    (schema) => ({ name: `open schema ${schema}`, work: "open", ...plain, begins: `schema ${schema}` }) as Operation,
  ),
  ...[1, 2, 3].map(
    (schema) =>
      ({
        name: `bring schema ${schema} under a passphrase to content keys`,
        work: "open",
        ...kept,
        begins: `schema ${schema} under a passphrase`,
      }) as Operation,
  ),
  ...both("daily backup", "back up daily"),
  ...both("backup elsewhere", "back up elsewhere"),
  ...both("sealed backup elsewhere", "back up sealed"),
];

/** What the program under test was told is done, or that it is about to be killed there. */
export type Line =
  | { readonly what: "at work" }
  | { readonly what: "imported"; readonly session: string; readonly sums: readonly string[] }
  | { readonly what: "noted"; readonly note: number }
  | { readonly what: "copied"; readonly path: string }
  | { readonly what: "done"; readonly steps: number }
  | { readonly what: "step"; readonly step: string };

/** What the program under test is told to do, and where it falls. */
export interface Orders {
  readonly folder: string;
  readonly work: Work;
  readonly passphrase?: string;
  readonly seed: number;
  /** The step, counted from 1, that is the last; 0 for none. */
  readonly lastStep: number;
  /** It kills itself there; else it stays there until it is killed. */
  readonly byOwnHand: boolean;
}

/** Where everything of a round lies: the register's own folder, and a place for copies outside of it. */
export interface Places {
  readonly register: string;
  readonly elsewhere: string;
}

export function placesIn(folder: string): Places {
  return { register: `${folder}/own/register.sqlite`, elsewhere: `${folder}/elsewhere` };
}

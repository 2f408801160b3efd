import { settle } from "../connection.ts";
import type { Register } from "../register.ts";
import type { CountedKind, ErasureCertificate, SearchedFile, SearchedKind } from "../register-views.ts";
import type { CleanedUp } from "./clean-up.ts";
import { filesToSearch } from "./files-to-search.ts";
import { FileSearch } from "./search-files.ts";
import type { SearchedValues } from "./searched-values.ts";
import { sharedPatterns } from "./shared-values.ts";

/** What is known only while the records are being erased. */
interface Erasing {
  readonly erased: NonNullable<ErasureCertificate["erased"]>;
  readonly values: SearchedValues;
  readonly dataFolder: string | undefined;
}

/** Searches every file within reach for what was erased, and says what is true now. */
export function certificateOf(
  register: Register,
  { writtenAnew, outOfReach, remains }: CleanedUp,
  copies: readonly string[],
  keyDestroyed: boolean,
  erasing?: Erasing,
): ErasureCertificate {
  const searched = erasing === undefined ? undefined : searchedFor(register, erasing);
  const { reads, journal } = register.contents;
  return {
    at: register.circumstances.now().toISOString(),
    ...(erasing !== undefined && { erased: erasing.erased }),
    keyDestroyed,
    tooShort: counted(erasing?.values.tooShort ?? []),
    unreadable: erasing?.values.unreadable ?? 0,
    shared: [],
    files: [],
    notSearched: [],
    ...searched,
    writtenAnew,
    copiesElsewhere: copies,
    backupsOutOfReach: outOfReach,
    remains,
    kept: { athletes: reads.athletes().length, journalEntries: journal.readNewest(1)[0]?.sequence ?? 0 },
  };
}

function searchedFor(register: Register, { values, dataFolder }: Erasing) {
  const { files, leftOut } = filesToSearch(register.file, dataFolder);
  const search = new FileSearch(values.patterns);
  const notSearched = [...leftOut];
  const looked = whileClosed(register, () =>
    files.flatMap((file) => {
      try {
        return [{ ...file, ...search.inFile(file.path) }];
      } catch (error) {
        const code = error instanceof Error && "code" in error ? error.code : undefined;
        if (code === undefined) throw error;
        // The log ends when the register is closed.
        if (code !== "ENOENT") notSearched.push(`${file.path} could not be read.`);
        return [];
      }
    }),
  );
  const found = new Set(looked.flatMap((each) => [...each.found]));
  const shared = sharedPatterns(register, values, found);
  const valueAt = (pattern: number) => values.patterns[pattern]?.value ?? 0;
  const own = (patterns: ReadonlySet<number>) =>
    new Set([...patterns].filter((pattern) => !shared.has(pattern)).map(valueAt));
  const kindsOf = (numbers: Iterable<number>) => [...numbers].flatMap((number) => values.kinds[number] ?? []);
  const foundOwn = own(found);
  // Recordings of one device begin alike; sharing that is no likeness of what was recorded.
  const sharedValues = [...new Set([...shared].map(valueAt))].filter(
    (value) => !foundOwn.has(value) && values.kinds[value] !== "recording",
  );
  return {
    searchedFor: counted(values.kinds),
    shared: counted(kindsOf(sharedValues)),
    notSearched,
    files: looked.map(
      ({ path, is, bytes, found: patterns }): SearchedFile => ({
        path,
        is,
        bytes,
        found: [...new Set(kindsOf(own(patterns)))],
      }),
    ),
  };
}

/**
 * Does something while no connection to the register is open. A file that SQLite has open must not be opened beside it
 * in the same process: closing it there lets go of SQLite's own locks (sqlite.org/howtocorrupt.html, 2.2).
 */
function whileClosed<Result>({ connection }: Register, work: () => Result): Result {
  try {
    return connection.whileClosed(work);
  } finally {
    settle(connection);
  }
}

function counted(kinds: readonly SearchedKind[]): readonly CountedKind[] {
  return [...new Set(kinds)].map((kind) => ({ kind, count: kinds.filter((each) => each === kind).length }));
}

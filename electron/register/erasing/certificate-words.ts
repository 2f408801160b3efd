import { countOf, listInWords } from "../../../core/ground/plain-words.ts";
import type {
  CertificateSection,
  CountedKind,
  ErasureCertificate,
  SearchedFile,
  SearchedKind,
} from "../register-views.ts";

/** The certificate of an erasure in words, the same on the command line and on screen. */

/** Something was found, is not finished, or could not be searched. */
export function certificateNeedsEyes(certificate: ErasureCertificate): boolean {
  return certificateSections(certificate).some(({ needsEyes }) => needsEyes === true);
}

/** What is empty is left out, except the searching: that nothing was found is said. */
export function certificateSections(certificate: ErasureCertificate): readonly CertificateSection[] {
  const { erased, remains, copiesElsewhere, backupsOutOfReach, notSearched, kept, writtenAnew } = certificate;
  const sections: readonly CertificateSection[] = [
    { title: erased === undefined ? "Finished" : "Erased", lines: erasedLines(certificate) },
    {
      title: "Still to be done",
      lines: remains.length === 0 ? [] : [...remains, "Erase again, or open the register again, once that is mended."],
      needsEyes: true,
    },
    { title: "Found where it should not be", lines: foundLines(certificate.files), needsEyes: true },
    { title: "Searched", ...searchedLines(certificate) },
    { title: "Searching says nothing of", lines: unsearchableLines(certificate) },
    { title: "Not searched", lines: [...notSearched, ...unreadableLines(certificate)], needsEyes: true },
    { title: "Written anew without it", lines: writtenAnew },
    { title: "Backups left as they are", lines: backupsOutOfReach, needsEyes: true },
    { title: "Copies elsewhere, out of reach: delete them yourself", lines: copiesElsewhere },
    {
      title: "Kept, without what was erased",
      lines: [
        `${countOf(kept.athletes, "athlete")} and ${kept.journalEntries === 1 ? "1 entry" : `${kept.journalEntries} entries`} of the journal: of what was erased they hold random identifiers, times and digests, and who erased it.`,
      ],
    },
    {
      title: "What searching cannot see",
      lines: [
        "Blocks that the disk has set free, texts inside compressed files, and copies made outside this program.",
      ],
    },
  ];
  return sections.filter(({ lines }) => lines.length > 0);
}

function erasedLines({ at, erased, keyDestroyed }: ErasureCertificate): readonly string[] {
  const time = `${at.slice(0, 16).replace("T", " ")} UTC`;
  const key =
    "The key of these contents was destroyed in the register and in each backup that was written anew: what was encrypted with it can be read by nobody.";
  const deed =
    erased === undefined
      ? `An erasure that was broken off earlier was taken up again, ${time}.`
      : `${listInWords(erasedWords(erased))}, ${time}.`;
  return keyDestroyed ? [deed, key] : [deed];
}

function erasedWords(erased: NonNullable<ErasureCertificate["erased"]>): readonly string[] {
  const { athletes, sessions, recordings, others } = erased;
  const parts = [
    [athletes, "athlete"],
    [sessions, "session"],
    [recordings, "recording"],
    [others, "other record"],
  ] as const;
  return parts.flatMap(([count, noun]) => (count > 0 ? [countOf(count, noun)] : []));
}

const advice: Readonly<Record<SearchedFile["is"], string>> = {
  register: "Close every window of the register, open it again and let it be verified.",
  log: "Close every window of the register and open it again.",
  backup: "Delete this backup, or restore it elsewhere and look into it.",
  other: "Look at this file, and delete it if it is about what was erased.",
};

function foundLines(files: readonly SearchedFile[]): readonly string[] {
  return files
    .filter(({ found }) => found.length > 0)
    .map(
      ({ path, is, found }) =>
        `${path} (or its name) holds ${listInWords(found.map((kind) => one[kind]))}. ${advice[is]}`,
    );
}

function searchedLines({ searchedFor, files }: ErasureCertificate): Pick<CertificateSection, "lines" | "needsEyes"> {
  if (searchedFor === undefined) {
    const gone = "Nothing was searched: what would have to be looked for went when the erasure began.";
    return { lines: [gone], needsEyes: true };
  }
  const looked = searchedFor.length === 0 ? "nothing that is personal" : countedWords(searchedFor);
  return {
    lines: [
      `Looked for, byte by byte, recordings also compressed: ${looked}.`,
      ...files.map(({ path, found }) => `${path}: ${found.length === 0 ? "none of it" : "see above"}`),
    ],
  };
}

function unsearchableLines({ tooShort, shared }: ErasureCertificate): readonly string[] {
  return [
    ...(tooShort.length === 0
      ? []
      : [`${countedWords(tooShort)}: shorter than six bytes, so it stands by chance in many files.`]),
    ...(shared.length === 0 ? [] : [`${countedWords(shared)}: records of other people in the register hold the same.`]),
  ];
}

function unreadableLines({ unreadable }: ErasureCertificate): readonly string[] {
  return unreadable === 0
    ? []
    : [`${countOf(unreadable, "erased record")} could not be read, so what they said could not be looked for.`];
}

function countedWords(kinds: readonly CountedKind[]): string {
  return listInWords(kinds.map(({ kind, count }) => (count === 1 ? `1 ${single[kind]}` : `${count} ${several[kind]}`)));
}

const single: Readonly<Record<SearchedKind, string>> = {
  code: "code",
  name: "name",
  "date of birth": "date of birth",
  note: "note",
  folder: "name of a session",
  recording: "recording",
};
const several: Readonly<Record<SearchedKind, string>> = {
  code: "codes",
  name: "names",
  "date of birth": "dates of birth",
  note: "notes",
  folder: "names of sessions",
  recording: "recordings",
};
const one: Readonly<Record<SearchedKind, string>> = {
  code: "a code",
  name: "a name",
  "date of birth": "a date of birth",
  note: "a note",
  folder: "the name of a session",
  recording: "a recording or a part of one",
};

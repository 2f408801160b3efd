import { lstatSync, statSync } from "node:fs";
import { english } from "../../core/words/english.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { type FoundSession, readSession } from "../files/read-folder.ts";
import { MachineTrouble, RequestRefused, telling } from "../refusals/request-refused.ts";
import { type MergedArchive, mergeArchive } from "../register/archive/merge-archive.ts";
import { looksLikeArchive } from "../register/archive/read-archive.ts";
import { writeArchive } from "../register/archive/write-archive.ts";
import { backUpTo, keepDailyBackup, makeDailyBackup } from "../register/backups.ts";
import { checkCode } from "../register/head-code.ts";
import { type ImportedSession, importSession } from "../register/import-sessions.ts";
import { troubleWords } from "../register/kept-backups.ts";
import type { Register } from "../register/register.ts";
import { removePassphrase, setPassphrase } from "../register/register-passphrase.ts";
import { previewBackup, restoreBackup } from "../register/restore-backup.ts";
import { stateNotKnown } from "../register/state-not-known.ts";
import { requireStrength } from "../register/strength/passphrase-strength.ts";
import { copiesAction } from "./copies-action.ts";
import { eraseAthlete } from "./erase-athlete.ts";
import { findSessions } from "./find-sessions.ts";
import { athleteOf } from "./named-athlete.ts";
import type { RegisterAnswer, RegisterRequest } from "./register-request.ts";
import { choice, readCautions } from "./stated-options.ts";
import { UsageError } from "./usage-error.ts";

/** So many of the newest entries of the journal are printed. */
const entriesShown = 200;

interface RegisterAction {
  readonly takesPaths?: boolean;
  /** Works on a register whose passphrase was not given. */
  readonly worksLocked?: boolean;
  /** Writes nothing, not even into the journal. */
  readonly readsOnly?: boolean;
  /** Makes the register where there is none. */
  readonly creates?: boolean;
  /** Checks what was typed before the register is opened. */
  readonly check?: (request: RegisterRequest) => void;
  readonly run: (register: Register, request: RegisterRequest) => RegisterAnswer | Promise<RegisterAnswer>;
}

/** The commands below `counterpoise register`. */
export const registerActions: Readonly<Record<string, RegisterAction>> = {
  list: { readsOnly: true, run: list },
  journal: { readsOnly: true, run: readJournal },
  import: {
    takesPaths: true,
    creates: true,
    check: ({ paths, options }) => {
      if (paths.length === 0) throw new UsageError("Name at least one folder or archive to import.");
      notKnownBy(options);
    },
    run: importPaths,
  },
  export: { check: ({ options }) => void needed(options.out, "--out FILE.zip"), run: exportArchive },
  backup: { run: backUp },
  restore: {
    takesPaths: true,
    check: ({ paths }) => {
      if (paths.length !== 1) throw new UsageError("Name one backup to restore.");
    },
    run: restore,
  },
  verify: { readsOnly: true, worksLocked: true, run: verify },
  copies: {
    worksLocked: true,
    check: ({ options }) => void choice("--verify", options.verify ?? "no", ["yes", "no"]),
    run: copiesAction,
  },
  erase: { run: eraseAthlete },
  protect: {
    check: ({ newPassphrase }) => void needed(newPassphrase, "--new-passphrase-file FILE"),
    run: async (register, { newPassphrase, tell }) => {
      const passphrase = needed(newPassphrase, "--new-passphrase-file FILE");
      await requireStrength(passphrase, [register.circumstances.who]);
      setPassphrase(register, passphrase, tell);
      return withTroubles(
        register,
        done({ protected: true }, protectedWords(register, "is under the new passphrase", "are")),
      );
    },
  },
  unprotect: {
    run: (register, { tell }) => {
      removePassphrase(register, tell);
      return withTroubles(
        register,
        done({ protected: false }, protectedWords(register, "has no passphrase any more", "have none")),
      );
    },
  },
};

function list(register: Register, { options }: RegisterRequest): RegisterAnswer {
  const athletes = register.reads.athletes(options.search === undefined ? {} : { text: options.search });
  const lines = athletes.map(({ code, name, involved, sessions, lastSession }) => [
    code,
    name ?? "",
    `involved: ${involved ?? "not stated"}`,
    counted(sessions, "session"),
    [lastSession?.date, lastSession?.milestone].filter((each) => each !== undefined).join(", "),
  ]);
  return { document: { athletes }, lines };
}

/** The newest entries of the journal: when, what, who. */
function readJournal(register: Register): RegisterAnswer {
  const entries = register.reads.journal(entriesShown);
  const lines = entries.map(({ sequence, at, action, who, by }) => [
    String(sequence),
    at,
    action,
    by ?? "no name given",
    `user ${who}`,
  ]);
  return { document: { entries }, lines };
}

/** Who states that cautions are not known; --by alone says who acts. */
function notKnownBy({ cautions, by }: RegisterRequest["options"]): string | undefined {
  return cautions === undefined ? undefined : readCautions({ cautions, ...(by !== undefined && { by }) });
}

async function importPaths(
  register: Register,
  { paths, options, filePassphrase }: RegisterRequest,
): Promise<RegisterAnswer> {
  const remarks: string[] = [];
  const archives = paths.filter((path) => isFile(path) && looksLikeArchive(path));
  const others = paths.filter((path) => !archives.includes(path));
  const found = others.length > 0 ? findSessions(others, (sentence) => remarks.push(sentence)) : [];
  const statedBy = notKnownBy(options);
  const done: string[] = [];
  const merged: (MergedArchive & { readonly archive: string })[] = [];
  for (const path of archives) {
    const archive = await sayingWhatWasDone(done, path, () => mergeArchive(register, path, filePassphrase));
    merged.push({ archive: path, ...archive });
    done.push(path);
  }
  // One session's recordings in memory at a time.
  const sessions: ImportedSession[] = [];
  for (const listed of found) {
    const name = listed.folder || "loose recordings";
    const session = await sayingWhatWasDone(done, name, () => {
      const read = readSession(listed);
      const imported = withReadingFindings(importSession(register, read), read.descriptionFindings);
      return statedBy === undefined ? imported : withNotKnown(register, imported, statedBy);
    });
    done.push(name);
    sessions.push(session);
  }
  const notes = [...[...merged, ...sessions].flatMap((each) => each.notes), ...(await backupTrouble(register))];
  return {
    document: { archives: merged, sessions },
    lines: [
      ...merged.map(
        (each) => `${each.archive}: ${counted(each.added, "record")} added, ${each.same + each.kept} there already`,
      ),
      ...sessions.map(
        (each) =>
          `${each.folder || "loose recordings"}: ${each.outcome}, ${counted(each.recordings, "recording")}${each.cautionsNotKnown ? ", cautions not known" : ""}`,
      ),
    ],
    remarks: [...remarks, ...notes],
    needsEyes: notes.length > 0,
  };
}

/** The same with what could not be read of its session.json: its recordings came in without what it says. */
function withReadingFindings(
  imported: ImportedSession,
  findings: FoundSession["descriptionFindings"],
): ImportedSession {
  const folder = imported.folder || "loose recordings";
  return {
    ...imported,
    notes: [...imported.notes, ...findings.map((each) => `${folder}: ${findingInWords(each, english).message}`)],
  };
}

/**
 * The same with the statement that what was not asked is not known, where the session lacks answers; one that cannot be
 * meant (of today's session, of one without a day) is said and costs nothing else.
 */
function withNotKnown(register: Register, imported: ImportedSession, by: string): ImportedSession {
  try {
    return { ...imported, cautionsNotKnown: stateNotKnown(register, imported.session, by) };
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    const { message } = telling(error, "It came in; that its cautions are not known was not written.") as Error;
    return { ...imported, notes: [...imported.notes, `${imported.folder || "loose recordings"}: ${message}`] };
  }
}

/** What was imported stays whatever becomes of the day's backup. @returns why it could not be made, if it could not */
async function backupTrouble(register: Register): Promise<readonly string[]> {
  if (register.readOnlyBecause !== undefined) return [];
  try {
    await keepDailyBackup(register);
    return [];
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    const { message } = telling(error, "What is listed was imported.") as Error;
    return [`Today's backup could not be made: ${message}`];
  }
}

/** Each archive and each session is a step of its own: where one is refused, those before it stay, and that is said. */
async function sayingWhatWasDone<Result>(
  done: readonly string[],
  name: string,
  work: () => Result | Promise<Result>,
): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof RequestRefused) || done.length === 0) throw error;
    const before = `Imported before that: ${done.join(", ")}.`;
    if (error instanceof MachineTrouble) throw telling(error, `Nothing of ${name} was written. ${before}`);
    throw new RequestRefused(`${error.message} ${before}`);
  }
}

async function exportArchive(
  register: Register,
  { options, filePassphrase }: RegisterRequest,
): Promise<RegisterAnswer> {
  const out = needed(options.out, "--out FILE.zip");
  await requireStrength(filePassphrase, [register.circumstances.who]);
  const athlete = options.athlete === undefined ? undefined : athleteOf(register, options.athlete).id;
  const contents = writeArchive(register, out, {
    ...(athlete !== undefined && { athlete }),
    ...(filePassphrase !== undefined && { passphrase: filePassphrase }),
  });
  const open =
    filePassphrase === undefined ? ["The archive is not under a passphrase: whoever has it can read it."] : [];
  return {
    ...done(
      { out, ...contents },
      `${out}: ${counted(contents.records, "record")} and ${counted(contents.recordings, "recording")}.`,
    ),
    remarks: open,
  };
}

async function backUp(register: Register, { options, filePassphrase }: RegisterRequest): Promise<RegisterAnswer> {
  if (options.out === undefined) {
    const path = await makeDailyBackup(register);
    return done({ backup: path }, `${path} was made and opened again to check it.`);
  }
  await requireStrength(filePassphrase, [register.circumstances.who]);
  await backUpTo(register, options.out, filePassphrase);
  return done({ backup: options.out }, `${options.out} was made and checked.`);
}

async function restore(register: Register, request: RegisterRequest): Promise<RegisterAnswer> {
  const [path = ""] = request.paths;
  const passphrases = request.filePassphrase === undefined ? {} : { file: request.filePassphrase };
  const inside = request.newPassphrase === undefined ? {} : { register: request.newPassphrase };
  const preview = await previewBackup(register, path, passphrases);
  const holds = `${path} holds ${counted(preview.athletes, "athlete")}, ${counted(preview.sessions, "session")} and ${counted(preview.recordings, "recording")}; its last change is of ${preview.lastChange}. ${preview.protectionSentence}`;
  if (request.options.confirm === undefined) {
    return {
      ...done({ preview, restored: false }, holds),
      remarks: ["Nothing was replaced. --confirm replace restores it."],
    };
  }
  if (request.options.confirm !== "replace") throw new UsageError("--confirm must say replace.");
  await restoreBackup(register, path, { ...passphrases, ...inside });
  return done(
    { preview, restored: true },
    holds,
    "It now is the register's content; what was there before lies among the backups.",
  );
}

function verify(register: Register, { options }: RegisterRequest): RegisterAnswer {
  const verification = register.verify();
  const code = options.code === undefined ? undefined : checkCode(register.connection, options.code);
  const { problems, records, recordings, journalEntries, contentsChecked } = verification;
  const entries = journalEntries === 1 ? "1 entry" : `${journalEntries} entries`;
  const counts = `Checked: ${counted(records, "record")}, ${counted(recordings, "recording")} and ${entries} of the journal`;
  const lines = problems.length === 0 ? [`${counts}; everything is as it was written.`] : [`${counts}.`, ...problems];
  const locked = "The register is locked: contents were not decrypted; --passphrase-file checks them too.";
  const open =
    "The register has no passphrase: whoever holds the file can write it anew, journal included; only a code that was printed before tells of that.";
  return {
    document: { ...verification, headCode: register.headCode, ...(code && { code }) },
    lines: [
      ...lines,
      ...(register.encrypted ? [] : [open]),
      // A code of what was found damaged is nothing to print.
      ...(problems.length === 0 ? [`The journal's code now: ${register.headCode ?? "none"}`] : []),
      ...(code ? [code.sentence] : []),
    ],
    remarks: contentsChecked ? [] : [locked],
    needsEyes: problems.length > 0 || !contentsChecked || code?.fits === false,
  };
}

function protectedWords(register: Register, now: string, backups: string): string {
  const behind = register.backupTroubles.length;
  if (behind === 0) return `The register ${now}, and its kept backups ${backups} too.`;
  return `The register ${now}, but ${counted(behind, "kept backup")} could not be brought along and ${behind === 1 ? "is" : "are"} as before.`;
}

/** The same with every kept backup that could not be brought along. */
function withTroubles(register: Register, answer: RegisterAnswer): RegisterAnswer {
  const troubles = register.backupTroubles.map(troubleWords);
  return { ...answer, remarks: [...(answer.remarks ?? []), ...troubles], needsEyes: troubles.length > 0 };
}

function isFile(path: string): boolean {
  return (
    lstatSync(path, { throwIfNoEntry: false }) !== undefined &&
    (statSync(path, { throwIfNoEntry: false })?.isFile() ?? false)
  );
}

function needed<Value>(value: Value | undefined, option: string): Value {
  if (value === undefined) throw new UsageError(`${option} is needed.`);
  return value;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function done(document: unknown, ...lines: readonly string[]): RegisterAnswer {
  return { document, lines };
}

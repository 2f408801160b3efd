import type { Patch } from "./plant.ts";

/** A mistake in the register's code, planted in a copy of it, and the tests that must notice. */
export interface PlantedFault {
  readonly fault: string;
  /** Where it is planted, from the top of the tree; each `before` stands there exactly once. */
  readonly patches: readonly Patch[];
  /** The test files that are run. */
  readonly tests: readonly string[];
  /** Whose failing counts: the test's own name. */
  readonly noticedBy: string;
}

const register = "electron/register";
const tests = "tests/electron/register";

export const plantedFaults: readonly PlantedFault[] = [
  {
    fault: "an erasure skips the backups",
    patches: [
      {
        file: `${register}/erasing/clean-up.ts`,
        before: "const backups = keptBackups(register.file).map(",
        after: "const backups = keptBackups(register.file).slice(0, 0).map(",
      },
    ],
    tests: [`${tests}/erasing.test.ts`],
    noticedBy: "erasing leaves no name, code or recording in the register, its write-ahead log or its backups",
  },
  {
    fault: "the data key stays the same when the passphrase changes",
    patches: [
      {
        file: `${register}/keys/conversion.ts`,
        before: "const dataKey = newKey();\n  const wrapped = wrapKey(dataKey, passphrase);\n  const since",
        after: "const dataKey = Uint8Array.from(old);\n  const wrapped = wrapKey(dataKey, passphrase);\n  const since",
      },
    ],
    tests: [`${tests}/content-keys.test.ts`, `${tests}/protection-stops.test.ts`, `${tests}/passphrase.test.ts`],
    noticedBy: "the protection of an earlier time opens nothing of today's file",
  },
  {
    fault: "the journal's head is written without its seal",
    patches: [
      {
        file: `${register}/journal.ts`,
        before: "return headSeal(key, this.#registerId, written.sequence, written.hash);",
        after: "return undefined;",
      },
    ],
    tests: [`${tests}/journal-seal.test.ts`],
    noticedBy: "the key that seals survives a change of passphrase",
  },
  {
    fault: "the seal of the journal's head is not checked",
    patches: [
      {
        file: `${register}/verify-register.ts`,
        before: "if (unlocked && !journal.headIsSealed) {",
        after: "if (unlocked && !journal.headIsSealed && id === undefined) {",
      },
    ],
    tests: [`${tests}/journal-seal.test.ts`],
    noticedBy:
      "under a passphrase, entries taken off the end with their records are found, whatever is written as the head",
  },
  {
    fault: "a head that was cut is sealed again by the next entry",
    patches: [
      {
        file: `${register}/journal.ts`,
        before: "if (key === undefined || (before !== undefined && !sealFits(key, this.#registerId, before))) return",
        after:
          "if (key === undefined || (before !== undefined && !sealFits(key, this.#registerId, before) && !key)) return",
      },
    ],
    tests: [`${tests}/journal-seal.test.ts`],
    noticedBy: "going on after such a cut does not seal it away",
  },
  {
    fault: "a commit is lost: a transaction ends without it",
    patches: [
      {
        file: `${register}/connection.ts`,
        before: '        this.execute("COMMIT");\n',
        after: "",
      },
    ],
    tests: [`${tests}/lasting.test.ts`],
    noticedBy:
      "what an action was acknowledged for is there for whoever opens the file next, though this program never closes it",
  },
  {
    fault: "commits do not wait for the disk (no kill of a program can show it)",
    patches: [
      {
        file: `${register}/open-register.ts`,
        before: "PRAGMA synchronous = FULL;",
        after: "PRAGMA synchronous = OFF;",
      },
    ],
    tests: [`${tests}/lasting.test.ts`],
    noticedBy: "every commit waits for the disk, also after a restoration",
  },
  {
    fault: "verifying skips a row with a wrong checksum",
    patches: [
      {
        file: `${register}/verify-register.ts`,
        before: 'if (record === "checksum") say(',
        after: 'if (record === "checksum") void (',
      },
    ],
    tests: [`${tests}/verifying.test.ts`],
    noticedBy: "verifying names every row that does not fit its checksum",
  },
  {
    fault: "verifying without the key skips a row with a wrong checksum",
    patches: [
      {
        file: `${register}/verify-register.ts`,
        before: "if (!store.fitsChecksum(kind, row)) say(",
        after: "if (!store.fitsChecksum(kind, row)) void (",
      },
    ],
    tests: [`${tests}/verifying.test.ts`],
    noticedBy: "under a passphrase it names them with the key, and without it",
  },
  {
    fault: "erasing leaves the person's content key",
    patches: [
      { file: `${register}/erase-records.ts`, before: "  destroyContentKeys(connection, athletes);\n", after: "" },
    ],
    tests: [`${tests}/content-keys.test.ts`],
    noticedBy: "erasing a person destroys the key, and loses nothing of a session that was that person's before",
  },
  {
    fault: "setting a passphrase brings the kept backups along only after the register has it",
    patches: [
      {
        file: `${register}/unfinished.ts`,
        before: 'if (conversion.to === "passphrase" && conversion.done === 0) bringBackups(register);',
        after: "",
      },
      {
        file: `${register}/register-passphrase.ts`,
        before: "    register.continueUnder(undefined);\n    bringBackups(register, passphrase);\n",
        after: "    register.continueUnder(undefined);\n",
      },
    ],
    tests: [`${tests}/protection-stops.test.ts`],
    noticedBy:
      "stopped after any step of setting, changing and removing a passphrase, nothing is in the clear under one and nothing is lost",
  },
  {
    fault: "removing a passphrase leaves the register its protection until everything lies in the clear",
    patches: [
      {
        file: `${register}/keys/conversion.ts`,
        before: "    note();\n    leavePassphrase(connection);\n  });",
        after: "    note();\n  });",
      },
      {
        file: `${register}/keys/conversion.ts`,
        before: '      connection.execute("DELETE FROM contentKeys");\n',
        after: '      connection.execute("DELETE FROM contentKeys");\n      leavePassphrase(connection);\n',
      },
    ],
    tests: [`${tests}/protection-stops.test.ts`],
    noticedBy:
      "stopped after any step of setting, changing and removing a passphrase, nothing is in the clear under one and nothing is lost",
  },
  {
    fault: "a register says that it has a passphrase before its free pages and its log are empty",
    patches: [
      {
        file: `${register}/unfinished.ts`,
        before: 'const isClean = conversion.to === "passphrase" && whereFree(',
        after: 'const isClean = conversion.to === "plain" && whereFree(',
      },
    ],
    tests: [`${tests}/protection-stops.test.ts`],
    noticedBy:
      "stopped after any step of setting, changing and removing a passphrase, nothing is in the clear under one and nothing is lost",
  },
  {
    fault: "a backup that cannot be opened keeps an erasure from its end",
    patches: [
      {
        file: `${register}/erasing/clean-up.ts`,
        before: "if (trouble instanceof MachineTrouble && !saysDamaged(trouble)) {",
        after: "if (!(trouble instanceof MachineTrouble)) throw error;\n    if (!saysDamaged(trouble)) {",
      },
    ],
    tests: [`${tests}/restoring-protection.test.ts`],
    noticedBy: "is named, kept and blocks neither setting nor changing a passphrase nor erasing nor opening",
  },
  {
    fault: "restoring drops the register's protection",
    patches: [
      {
        file: `${register}/restore-backup.ts`,
        before: "prepare(copy, opened.key, own ?? taken, register);",
        after: "prepare(copy, opened.key, taken, register);",
      },
    ],
    tests: [`${tests}/restoring-protection.test.ts`],
    noticedBy: "a plain copy restored into a register that has a passphrase since comes under that passphrase",
  },
  {
    fault: "a copy in the clear is unsealed to a file with a name beside a register under a passphrase",
    patches: [
      {
        file: `${register}/nameless-file.ts`,
        before: 'if (process.platform !== "win32") rmSync(path);',
        after: 'if (process.platform === "win32") rmSync(path);',
      },
    ],
    tests: [`${tests}/restoring-protection.test.ts`],
    noticedBy:
      "a copy in the clear, sealed or not, leaves nothing beside a register under a passphrase, wherever restoring it is stopped",
  },
];

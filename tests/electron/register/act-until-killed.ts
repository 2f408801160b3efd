import { randomUUID } from "node:crypto";
import { writeSync } from "node:fs";
import { keepDailyBackup, makeDailyBackup } from "../../../electron/register/backups.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { recordingFile } from "../../../electron/stored-session.ts";
import type { Acknowledgement } from "./kill-rounds.ts";

/**
 * A program that works on a register without end, and writes one line for each action that it was told is done. What
 * it works with follows from its seed; the register's file is its first argument.
 */
const [file = "", seedText = "1"] = process.argv.slice(2);
let state = Number(seedText) >>> 0;

function draw(below: number): number {
  state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
  return Math.floor((state / 2 ** 32) * below);
}

/** Written at once: what has been acknowledged has left this process before it can be killed. */
function acknowledge(acknowledgement: Acknowledgement): void {
  writeSync(1, `${JSON.stringify(acknowledgement)}\n`);
}

acknowledge({ what: "started" });
const register = await openRegister(file, { create: true, waitMilliseconds: 10_000 });
acknowledge({ what: "opened" });
await keepDailyBackup(register);
const edited = register.writes.act("athlete added", (changes) =>
  changes.add("athletes", {}, { code: `E-${randomUUID()}`, note: "0" }),
);
acknowledge({ what: "noted", athlete: edited, note: 0 });
for (let note = 1; ; note += 1) {
  switch (draw(6)) {
    case 0: {
      const code = `K-${randomUUID()}`;
      const files = Array.from({ length: 1 + draw(4) }, (_, index) => {
        const rows = Array.from({ length: 200 }, (__, row) => `${row / 1000},${500 + draw(400_000) / 1000}`);
        return recordingFile(`jump-${index}.csv`, Buffer.from(`time (s),force (N)\n${rows.join("\n")}\n`));
      });
      const description = {
        athlete: { code },
        date: "2026-10-05",
        files: [{ file: "jump-0.csv", trial: 1, seen: true }],
      };
      const found = { folder: code, files, unreadable: [], descriptionFindings: [], description };
      const { session } = importSession(register, found);
      acknowledge({ what: "imported", session, sums: files.map(({ sha256 }) => sha256) });
      break;
    }
    case 1:
      acknowledge({ what: "backed up", path: await makeDailyBackup(register) });
      break;
    case 2: {
      const root = { kind: "athletes", id: "" } as const;
      const id = register.writes.act("athlete added", (set) => set.add("athletes", {}, { code: `X-${randomUUID()}` }));
      register.writes.moveToBin({ ...root, id });
      eraseForGood(register, [{ ...root, id }]);
      acknowledge({ what: "erased", athlete: id });
      break;
    }
    default: {
      const { content } = register.reads.record("athletes", edited)!;
      register.writes.act("athlete changed", (set) =>
        set.change("athletes", edited, { ...content, note: String(note) }),
      );
      acknowledge({ what: "noted", athlete: edited, note });
    }
  }
}

import { expect, test } from "vitest";
import {
  checkedWords,
  checkWords,
  copyTroubles,
  protectionWords,
} from "../../../electron/register/copies/copy-words.ts";
import type { KnownCopy } from "../../../electron/register/register-views.ts";
import { copyTitle, timeWords } from "../../../renderer/athletes/copy-titles.ts";

const copy: KnownCopy = {
  key: "daily-2026-11-02T08-01-00.sqlite",
  path: "/clinic/register.sqlite-backups/daily-2026-11-02T08-01-00.sqlite",
  kind: "kept daily",
  madeAt: "2026-11-02T08:01:00Z",
  byteLength: 212_992,
  protection: "this passphrase",
  state: "there",
  stale: [],
};

test("a copy is called by what it is, whose, and its day and time", () => {
  expect(copyTitle(copy)).toBe("Made daily, 2 Nov 2026, 08:01 UTC");
  expect(copyTitle({ ...copy, kind: "archive elsewhere", athlete: "GH-07" })).toBe(
    "Archive of GH-07 alone, 2 Nov 2026, 08:01 UTC",
  );
  const { madeAt: _madeAt, ...undated } = copy;
  expect(copyTitle({ ...undated, kind: "kept, put there by hand" })).toBe("Put among the backups by hand");
});

test("what a check found is said with when, how far, and whether it still holds", () => {
  const verifiedAt = "2026-11-03T09:02:00.000Z";
  const found = { extent: "everything", problems: [], writtenSince: false } as const;
  expect(checkWords(copy, timeWords)).toBe("never checked");
  expect(checkWords({ ...copy, verifiedAt, found }, timeWords)).toBe(
    "checked 3 Nov 2026, 09:02 UTC: everything, sound",
  );
  const earlier = { ...copy, verifiedAt, found: { ...found, extent: "structure", writtenSince: true } } as const;
  expect(checkWords(earlier, timeWords)).toBe(
    "checked 3 Nov 2026, 09:02 UTC: the file's structure, sound; the file was written again since",
  );
  const damaged = { ...copy, verifiedAt, found: { ...found, problems: ["Row 1."] } };
  expect(checkWords(damaged, timeWords)).toBe("checked 3 Nov 2026, 09:02 UTC: damaged");
  expect(copyTroubles(damaged)).toEqual(["Damaged: Row 1."]);
  expect(checkedWords({ key: copy.key, copy: damaged, isKept: true })).toBe("It is damaged.");
  expect(checkedWords({ key: copy.key, copy: { ...copy, found }, isKept: false })).toBe(
    "It is sound. When that was could not be kept: the register is open for reading only.",
  );
});

test("everything that must be known of a copy is a sentence, and protection has plain words", () => {
  const because = "Its folder is not there.";
  const stale = [{ reason: "earlier passphrase", sentence: "Under an earlier one." }] as const;
  expect(copyTroubles({ ...copy, state: "unreachable", because, stale })).toEqual([because, "Under an earlier one."]);
  expect(protectionWords(copy)).toBe("the register's passphrase");
  expect(protectionWords({ ...copy, protection: "none" })).toBe("no passphrase");
});

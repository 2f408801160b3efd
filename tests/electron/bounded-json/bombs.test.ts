import { expect, test } from "vitest";
import { bombs } from "../../bench/bombs/make-bombs.ts";
import { tryBomb } from "../../bench/bombs/try-bomb.ts";

const mostMegabytes = 300;

/** The two that took 2.1 and 11.7 GB before, and one of each other reader; tests/bench/bombs.ts tries all. */
const sample = [
  ["zip whose manifest is 240 MB of brackets", /unpacked it would be more than 100 times as large/],
  ["session.json of 20 MB of brackets", /^session\.json was not read: it is larger than 8 MB\.$/],
  ["request of 16 MB of brackets", /lists and objects within each other/],
] as const;

test.each(sample)(
  "%s is refused in a sentence within 300 MB more memory (a fixed sample of three)",
  (what, sentence) => {
    const bomb = bombs.find((each) => each.what === what)!;
    const met = tryBomb(bomb);
    expect(met.sentence).toMatch(sentence);
    expect(met.peakMegabytes).toBeLessThan(mostMegabytes);
  },
);

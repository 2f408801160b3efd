import { beforeAll, describe, expect, it, test } from "vitest";
import { analyzeSession } from "../../core/analyze.ts";
import { assignmentOffers } from "../../core/assignment/assignment-offers.ts";
import {
  type AssignmentRow,
  acceptedOffers,
  assignmentRows,
  filledDown,
} from "../../core/assignment/assignment-rows.ts";
import { nameOffers } from "../../core/assignment/name-offers.ts";
import { sessionOffers } from "../../core/assignment/session-offers.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { recordingFile } from "../../electron/files/stored-session.ts";
import { bytesOf, jumpText } from "../electron/simulated-recordings.ts";

describe("a name", () => {
  test.each([
    ["drop-jump-left-30cm-2", { test: "dropJump", limb: "left", dropHeightMetres: 0.3 }],
    ["DropJump_L_box20", { test: "dropJump", limb: "left", dropHeightMetres: 0.2 }],
    [
      "drop jump both 0,45 m lead right",
      { test: "dropJump", limb: "both", dropHeightMetres: 0.45, leadingLeg: "right" },
    ],
    ["drop-landing-right-leg-first-300mm", { test: "dropLanding", leadingLeg: "right", dropHeightMetres: 0.3 }],
    ["2026-10-14 counterMovement rechts", { test: "countermovementJump", limb: "right", date: "2026-10-14" }],
    ["20261014_gauche", { limb: "left", date: "2026-10-14" }],
    ["squatjump-3", { test: "squatJump" }],
  ] as const)("%s is understood", (name, offers) => {
    expect(nameOffers(name)).toEqual(offers);
  });

  test.each([
    "month-7",
    "drop-jump and squat-jump",
    "trial 12",
    "20 30 40",
    "14.10.2026",
    "5000 m",
    "30cm or 40cm",
    "20261399",
  ])("%s says nothing that has one reading", (name) => {
    expect(nameOffers(name)).toEqual({});
  });
});

describe("offers", () => {
  it("come from the header before the file name, from that before the folders, and last from the trace", () => {
    const reading = {
      kind: "delimited",
      hints: [
        { kind: "test", value: "squatJump", unit: "", line: 2, written: "Test: squat jump" },
        { kind: "dropHeight", value: 0.4, unit: "m", line: 3, written: "Box: 40 cm" },
        { kind: "athlete", value: "GH-07", unit: "", line: 1, written: "Athlete: GH-07" },
      ],
    } as never;
    const recognised = {
      test: "countermovementJump",
      trace: { seen: "no dip", before: "standing on the plate", flightSeconds: 0.5 },
    } as const;
    const offers = assignmentOffers({ file: "dropjump-left.csv", folder: "30cm/2026-10-14", reading, recognised });
    expect(offers.test).toEqual([
      { value: "squatJump", from: "header, line 2" },
      { value: "dropJump", from: "file name" },
      { value: "countermovementJump", from: "trace" },
    ]);
    expect(offers.limb).toEqual([{ value: "left", from: "file name" }]);
    expect(offers.dropHeightMetres).toEqual([
      { value: 0.4, from: "header, line 3" },
      { value: 0.3, from: "folder name" },
    ]);
    expect(offers.athlete).toEqual([{ value: "GH-07", from: "header, line 1" }]);
    expect(offers.date).toEqual([{ value: "2026-10-14", from: "folder name" }]);
  });

  it("name each value once, by its strongest source", () => {
    const recognised = { test: "dropJump", trace: { seen: "impact", before: "empty plate" } } as const;
    expect(assignmentOffers({ file: "dropjump.csv", folder: "drop jump", recognised }).test).toEqual([
      { value: "dropJump", from: "file name" },
    ]);
  });
});

describe("whose session it is", () => {
  const naming = (athlete: string, file: string) => ({
    file,
    reading: {
      kind: "delimited",
      hints: [{ kind: "athlete", value: athlete, unit: "", line: 1, written: `Athlete: ${athlete}` }],
    } as never,
  });
  const athlete = { value: "GH-07", from: "header, line 1" };

  it("is offered where the files that say it agree, with the day in the folder's name", () => {
    const files = [naming("GH-07", "a.csv"), { file: "b.csv" }, naming("GH-07", "c.csv")];
    expect(sessionOffers({}, "2026-10-14", files)).toEqual({
      athlete,
      date: { value: "2026-10-14", from: "folder name" },
    });
  });

  it("is not offered where they differ, nor where it is stated", () => {
    expect(sessionOffers({}, "day", [naming("GH-07", "a.csv"), naming("GH-08", "b.csv")])).toEqual({});
    expect(sessionOffers({ athlete: { code: "X" } }, "day", [naming("GH-07", "a.csv")])).toEqual({});
  });
});

describe("rows of the assignment", () => {
  const texts = {
    "cmj-both.csv": jumpText("both", 701),
    "rec-1.csv": `Athlete,GH-08\n${jumpText("left", 703, 0.12)}`,
    "squat-jump-right.csv": jumpText("right", 705, 0.12),
  };
  let rows: readonly AssignmentRow[];
  beforeAll(() => {
    const files = Object.entries(texts).map(([name, text]) => recordingFile(name, bytesOf(text)));
    const description: SessionDescription = {
      athlete: { code: "GH-07" },
      files: [{ file: "cmj-both.csv", limb: "both" }],
    };
    const nothing = { folder: "left/day", unreadable: [], descriptionFindings: [], stated: {} };
    const { result, recordings } = analyzeSession({ ...nothing, files, description }, defaultSettings);
    rows = assignmentRows(
      result,
      files.map(({ path }) => {
        const reading = recordings.get(path)?.reading;
        return { file: path, ...(reading === undefined ? {} : { reading }) };
      }),
    );
  });
  const row = (file: string) => {
    const found = rows.find((each) => each.file === file);
    if (found === undefined) throw new Error(`No row of ${file}.`);
    return found;
  };

  it("say of each value where it comes from, and offer what else is said", () => {
    expect(row("cmj-both.csv").test).toEqual({
      value: "countermovementJump",
      from: "file name",
      offers: [],
      applies: true,
    });
    expect(row("cmj-both.csv").limb).toMatchObject({ value: "both", from: "stated" });
    expect(row("cmj-both.csv").limb.offers).toEqual([{ value: "left", from: "folder name" }]);
    expect(row("rec-1.csv").limb).toMatchObject({ value: "left", from: "loaded plate" });
    expect(row("rec-1.csv").test).toEqual({
      from: "",
      offers: [{ value: "countermovementJump", from: "trace" }],
      applies: true,
    });
    expect(row("rec-1.csv").dropHeightMetres.applies).toBe(true);
    expect(row("cmj-both.csv").dropHeightMetres.applies).toBe(false);
  });

  it("point out where trace or header contradict them", () => {
    expect(row("squat-jump-right.csv").contradictions.join(" ")).toContain("a countermovement");
    expect(row("rec-1.csv").contradictions).toEqual([
      "The file names “GH-08” (header, line 1); the session is that of GH-07.",
    ]);
  });

  it("are filled by offers only where nothing is known and one thing is offered", () => {
    expect(acceptedOffers(rows)).toEqual([{ file: "rec-1.csv", test: "countermovementJump" }]);
  });

  it("are filled down with what the first one is taken for", () => {
    expect(filledDown([row("cmj-both.csv"), row("rec-1.csv")])).toEqual([
      { file: "rec-1.csv", test: "countermovementJump", limb: "both" },
    ]);
    expect(filledDown([])).toEqual([]);
  });
});

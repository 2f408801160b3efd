import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { buildSheet } from "../../core/sheet/build-sheet.ts";
import schema from "../../core/sheet/result.schema.json" with { type: "json" };
import { resultCsv } from "../../core/sheet/result-csv.ts";
import { resultDocument } from "../../core/sheet/result-document.ts";
import { sheetHtml } from "../../core/sheet/sheet-html.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { StatedOptions } from "../../core/stated/stated-options.ts";
import { projectRoot } from "../architecture/imports.ts";
import { analyzeBytes } from "../worked/worked-example.ts";
import { athlete, saidHops, written } from "./simulate/faulty/faulty-trial.ts";
import { analyzeSamples } from "./simulated/session.ts";

const preInjury = join(projectRoot, "sample-traces/maren-tveitlund/1-pre-injury");
/** The left leg alone, on the plate whose column is called left. */
const onLeftPlate = readFileSync(join(preInjury, "countermovement-left-1.csv"));
const onBothPlates = readFileSync(join(preInjury, "countermovement-both-1.csv"));

function analysed(
  files: Readonly<Record<string, Uint8Array>>,
  stated: StatedOptions = {},
  description: SessionDescription = {},
): SessionResult {
  return analyzeBytes(files, { involved: "right", ...stated }, description).result;
}

const codes = ({ findings }: Pick<TrialResult, "findings">) => findings.map((each) => each.code);
const plates = ({ measures }: TrialResult) => [...new Set(measures.map((each) => each.plate))];
const sides = ({ measures }: TrialResult) => [...new Set(measures.map((each) => each.side))];

/** The first trial of a session. */
function first({ trials }: SessionResult): TrialResult {
  const [trial] = trials;
  if (trial === undefined || trial.status === "refused") throw new Error("The jump was not analysed.");
  return trial;
}

describe("a leg that is stated against the loaded plate", () => {
  const jump = { test: "countermovementJump" } as const;
  const doors = {
    "an option": () => analysed({ "jump.csv": onLeftPlate }, { ...jump, limb: "right" }),
    "session.json": () =>
      analysed({ "jump.csv": onLeftPlate }, {}, { files: [{ file: "jump.csv", ...jump, limb: "right" }] }),
    "the name of the file": () => analysed({ "countermovement-right-1.csv": onLeftPlate }),
    "an option, beside two-leg trials of other plates": () =>
      analysed(
        { "both.csv": onBothPlates, "jump.csv": onLeftPlate },
        {},
        {
          plates: [
            { column: "left", foot: "left" },
            { column: "right", foot: "right" },
          ],
          files: [
            { file: "both.csv", ...jump, limb: "both" },
            { file: "jump.csv", ...jump, limb: "right" },
          ],
        },
      ),
  };

  test.each(Object.entries(doors))("by %s is asked about, and no measure carries a side", (_door, open) => {
    const result = open();
    const trial = result.trials.find((each) => each.limb === "right")!;
    expect(trial.feet).toBe("contradicted");
    expect(codes(trial)).toContain("plates-contradict");
    expect(codes(result)).toContain("plates-contradict");
    expect(trial.measures.length).toBeGreaterThan(20);
    expect([sides(trial), plates(trial)]).toEqual([[undefined], [1]]);
    expect(trial.measures.filter((each) => each.id.endsWith("PerBodyMass"))).toEqual([]);
    const [comparison] = result.comparisons.filter((each) => each.legs === "single");
    expect(comparison).toMatchObject({ basis: "plates", plates: "contradicted", first: { plate: 1 } });
    expect(comparison?.index).toBeUndefined();
  });

  test.each([
    ["the other leg", { limb: "left" }],
    ["the feet on the plates", { limb: "right", plates: [{ column: "left", foot: "right" }] }],
    ["that the feet were turned round", { limb: "right", swapPlates: true }],
  ] as const)("has its sides again once a person states %s", (_answer, answer) => {
    const trial = first(
      analysed({ "jump.csv": onLeftPlate }, {}, { files: [{ file: "jump.csv", ...jump, ...answer }] }),
    );
    expect(trial.feet).toBeUndefined();
    expect(sides(trial)).toEqual([answer.limb]);
    expect(codes(trial)).not.toContain("plates-contradict");
  });

  test("gives no status to what asks for one leg's value", () => {
    const { criteria } = analyzeSamples("maren-tveitlund/6-month-11", {
      description: (own) => ({
        ...own,
        files: [...(own.files ?? []), { file: "drop-jump-left-1.csv", limb: "right" }],
      }),
    }).result;
    const single = criteria.filter(({ criterion }) => criterion.test === "dropJump" && criterion.legs === "single");
    expect(single.length).toBeGreaterThan(1);
    for (const each of single) expect([each.status, each.estimate]).toEqual(["not-measured", undefined]);
  });
});

describe("a leg that only the name of the loaded plate tells", () => {
  const trial = first(analysed({ "jump.csv": onLeftPlate }, { test: "countermovementJump" }));

  test("is not said while nothing proves which foot stood on it", () => {
    expect(trial.feet).toBe("unproved");
    expect([sides(trial), plates(trial)]).toEqual([[undefined], [1]]);
    const [published] = resultDocument(
      [analysed({ "jump.csv": onLeftPlate }, { test: "countermovementJump" })],
      defaultSettings,
    ).trials;
    expect([published?.limb, published?.legs, published?.feet]).toEqual([undefined, "single", "unproved"]);
  });

  test("is said once the tester states the plates", () => {
    const layout = { left: "left", right: "right", platesStated: true } as const;
    expect(sides(first(analysed({ "jump.csv": onLeftPlate }, { test: "countermovementJump", layout })))).toEqual([
      "left",
    ]);
  });
});

describe("a two-leg trial whose feet are unproved", () => {
  const result = analysed({ "countermovement-both-1.csv": onBothPlates });
  const trial = first(result);
  const document = resultDocument([result], defaultSettings);

  test("is told by plate: values, events, and nothing that only sides give", () => {
    expect(trial.feet).toBe("unproved");
    expect(new Set(sides(trial))).toEqual(new Set(["both", undefined]));
    expect(new Set(plates(trial))).toEqual(new Set([undefined, 1, 2]));
    expect(trial.events.some((each) => each.side !== undefined)).toBe(false);
    expect(trial.events.filter((each) => each.plate !== undefined)).toHaveLength(4);
    const ids = trial.measures.map((each) => each.id);
    const said = trial.findings.find((each) => each.code === "plates-unproved");
    for (const id of ["limbTakeoffDifference", "limbTouchdownDifference"]) {
      expect(ids).not.toContain(id);
      expect(said?.removes).toContain(id);
    }
    expect(trial.measures.filter((each) => each.id.endsWith("PerBodyMass") && each.plate !== undefined)).toEqual([]);
    // The physical values are those of the columns, whoever stood there.
    const stated = first(
      analysed(
        { "countermovement-both-1.csv": onBothPlates },
        { layout: { left: "left", right: "right", platesStated: true } },
      ),
    );
    const impulse = (of: TrialResult, bearer: object) =>
      of.measures.find(
        (each) =>
          each.id === "brakingImpulse" && Object.entries(bearer).every(([key, value]) => each[key as "side"] === value),
      )?.value;
    expect(impulse(trial, { plate: 1 })).toBe(impulse(stated, { side: "left" }));
    expect(impulse(trial, { plate: 2 })).toBe(impulse(stated, { side: "right" }));
  });

  test("is published so, by the schema, in JSON and CSV", () => {
    const validate = new Ajv2020({ strict: false }).compile(schema);
    validate(document);
    expect(validate.errors).toBeNull();
    for (const each of document.comparisons.filter(({ legs }) => legs === "both")) {
      expect(each).toMatchObject({ basis: "plates", plates: "unproved", plate1: { plate: 1 }, plate2: { plate: 2 } });
      expect(Object.keys(each)).not.toContain("index");
      expect([each.plate1?.meanPerBodyMass, each.plate2?.meanPerBodyMass]).toEqual([undefined, undefined]);
    }
    const [header = [], ...rows] = resultCsv(document)
      .trim()
      .split("\n")
      .map((line) => line.split(","));
    const cellsOf = (name: string) => rows.map((cells) => cells[header.indexOf(name)]);
    expect(new Set(cellsOf("side"))).toEqual(new Set(["both", ""]));
    expect(new Set(cellsOf("plate"))).toEqual(new Set(["", "1", "2"]));
    const sides = cellsOf("side");
    expect(cellsOf("plate").every((plate, at) => (plate === "") === (sides[at] === "both"))).toBe(true);
  });

  test("has columns called plate 1 and plate 2 on the sheet, without index, limb colour or kilogram", () => {
    const html = sheetHtml(buildSheet(result, defaultSettings));
    const [, table = ""] = /<table[^>]*>(?=(?:(?!<\/table>).)*values of each plate)(.*?)<\/table>/s.exec(html) ?? [];
    expect(table).toContain("plate 1");
    expect(table).toContain("plate 2");
    expect(table).not.toMatch(/index|limb-(involved|uninvolved|left|right)|%/);
    expect(html).not.toContain("Values per kilogram of body mass");
  });
});

test("Hops tell each foot's contact by plate while nobody knows whose it is", () => {
  const hops = Array.from({ length: 6 }, () => ({ contactSeconds: 0.2, jumpHeightMetres: 0.2 }));
  const { text } = written(simulateHops({ ...athlete(1), entryHeightMetres: 0.18, hops }), saidHops);
  const bytes = { "hops.csv": new TextEncoder().encode(text) };
  const trial = first(analyzeBytes(bytes, {}, { files: [{ file: "hops.csv", ...saidHops }] }).result);
  expect(trial.hops?.length).toBeGreaterThan(4);
  for (const hop of trial.hops ?? [])
    expect(hop.limbs?.map((each) => [each.plate, each.side])).toEqual([
      [1, undefined],
      [2, undefined],
    ]);
});

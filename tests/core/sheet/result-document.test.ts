import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { measureCatalogue } from "../../../core/ground/measures/catalogue.ts";
import { testKinds } from "../../../core/ground/test-kind.ts";
import { publishedUnit } from "../../../core/ground/units.ts";
import { engineVersion } from "../../../core/ground/version.ts";
import { defaultSettings, settingsHash, settingsWith } from "../../../core/settings/settings.ts";
import schema from "../../../core/sheet/result.schema.json" with { type: "json" };
import { type ResultDocument, resultDocument, resultJson } from "../../../core/sheet/result-document.ts";
import packageJson from "../../../package.json" with { type: "json" };
import {
  bothInvolvedSession,
  exampleSession,
  exampleTrial,
  healthySession,
  refusedTrial,
  stoppedSession,
} from "./example-session.ts";

const validate = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  schema,
);

/** The problems the schema finds in a document, as it would be read back from its JSON text. */
function problems(document: ResultDocument): readonly string[] {
  validate(JSON.parse(resultJson(document)));
  return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.message}`);
}

const everyKind = [exampleSession({ gravity: 9.82 }), healthySession(), bothInvolvedSession(), stoppedSession()];

describe("the result document", () => {
  test.each(everyKind.map((session) => [session.folder, session] as const))(
    "of a session (%s) keeps to the published schema",
    (_folder, session) => {
      expect(problems(resultDocument([session], defaultSettings))).toEqual([]);
    },
  );

  test("without any session still keeps to the schema", () => {
    expect(problems(resultDocument([], defaultSettings))).toEqual([]);
  });

  test("is refused by the schema with any further key, at the top, in a trial, a measure, an event or a finding", () => {
    const document = JSON.parse(resultJson(resultDocument([exampleSession()], defaultSettings)));
    const trial = document.trials[0];
    const places = [
      document,
      trial,
      trial.measures[0],
      trial.events[0],
      document.trials[1].findings,
      document.criteria[0],
    ];
    for (const place of places) {
      const target = Array.isArray(place)
        ? document.trials.find((t: typeof trial) => t.findings.length > 0).findings[0]
        : place;
      target.surprise = 1;
      expect(validate(document)).toBe(false);
      delete target.surprise;
    }
    expect(validate(document)).toBe(true);
  });

  test("is refused by the schema when a refused trial has a measure or a value is null", () => {
    const refused = { ...refusedTrial, measures: exampleTrial("a.csv", "both", 0.3).measures };
    expect(problems(resultDocument([exampleSession({ trials: [refused] })], defaultSettings))).not.toEqual([]);
    const document = JSON.parse(resultJson(resultDocument([exampleSession()], defaultSettings)));
    document.trials[0].measures[0].uncertainty = null;
    expect(validate(document)).toBe(false);
  });

  test("leaves out the hash of a file whose bytes could not be read", () => {
    const document = resultDocument([exampleSession({ trials: [{ ...refusedTrial, sha256: "" }] })], defaultSettings);
    expect(document.trials[0]).not.toHaveProperty("sha256");
    expect(problems(document)).toEqual([]);
  });

  test("can carry every measure and every test the program knows", () => {
    const units = schema.$defs.unit.enum;
    expect(measureCatalogue.filter((entry) => !units.includes(publishedUnit(entry.unit)))).toEqual([]);
    expect(schema.$defs.test.enum).toEqual([...testKinds]);
    const identifier = new RegExp(schema.$defs.identifier.pattern);
    expect(measureCatalogue.filter((entry) => !identifier.test(entry.id))).toEqual([]);
  });

  test("names the engine of package.json and the hash of all settings", () => {
    const settings = settingsWith({ minimumTrialsPerSide: 4 });
    const document = resultDocument([], settings);
    expect(engineVersion).toBe(packageJson.version);
    expect(document.engine).toEqual({ version: packageJson.version });
    expect(document.settings.hash).toBe(settingsHash(settings));
    expect(document.settings.values).toEqual(settings);
  });

  test("orders trials by path, then number, whatever order they came in", () => {
    const trials = [
      exampleTrial("1.csv", "both", 0.3, { trial: 2 }),
      exampleTrial("1.csv", "both", 0.3, { trial: 10 }),
      exampleTrial("1.csv", "both", 0.3, { trial: 1 }),
    ];
    const sessions = [
      exampleSession({ folder: "b", trials }),
      exampleSession({
        folder: "a",
        trials: [exampleTrial("Z.csv", "both", 0.3), exampleTrial("a.csv", "both", 0.3)],
      }),
    ];
    const document = resultDocument(sessions, defaultSettings);
    // By hand: code units put Z before a; numbers sort as numbers.
    expect(document.trials.map(({ file, trial }) => `${file} ${trial}`)).toEqual([
      "a/Z.csv 1",
      "a/a.csv 1",
      "b/1.csv 1",
      "b/1.csv 2",
      "b/1.csv 10",
    ]);
    expect(resultJson(resultDocument([...sessions].reverse(), defaultSettings))).toBe(resultJson(document));
  });

  test("gives involved and uninvolved where a side is involved, else left and right", () => {
    const [first] = resultDocument([exampleSession()], defaultSettings).comparisons;
    expect(first?.involved?.side).toBe("right");
    expect(first?.uninvolved).toMatchObject({ side: "left", trials: 3, values: [0.142, 0.137, 0.141] });
    expect(first).not.toHaveProperty("left");
    const [healthy] = resultDocument([healthySession()], defaultSettings).comparisons;
    expect(healthy?.left?.side).toBe("left");
    expect(healthy).not.toHaveProperty("involved");
    const [both] = resultDocument([bothInvolvedSession()], defaultSettings).comparisons;
    expect(both).not.toHaveProperty("index");
  });

  test("joins each comparison with the criterion that reads it, and only with that one", () => {
    const document = resultDocument([exampleSession()], defaultSettings);
    expect(document.comparisons.map(({ measure, threshold, status }) => [measure, threshold, status])).toEqual([
      ["jumpHeightImpulse", 90, "not-met"],
      ["brakingImpulse", 90, "not-met"],
      ["propulsionImpulse", 90, "too-close-to-call"],
      ["peakLandingForce", undefined, undefined],
    ]);
    expect(document.criteria.map((each) => each.id)).toContain("heightAgainstReference");
  });

  test("names the athlete by code only and says nothing of the work in progress", () => {
    const text = resultJson(resultDocument([exampleSession()], defaultSettings));
    expect(text).toContain('"athlete": "GHK-07"');
    expect(text).not.toContain("Maren");
    expect(text).not.toContain('"seen"');
  });
});

describe("its JSON text", () => {
  test("ends with one newline, is indented by two spaces and starts with the schema version", () => {
    const text = resultJson(resultDocument([], defaultSettings));
    expect(text.startsWith('{\n  "schemaVersion": 3,\n  "engine": {\n    "version":')).toBe(true);
    expect(text.endsWith("}\n")).toBe(true);
    expect(text.endsWith("}\n\n")).toBe(false);
  });

  test("gives numbers back bit for bit", () => {
    const value = 0.1 + 0.2; // 0.30000000000000004 by IEEE 754
    const trial = exampleTrial("a.csv", "both", value);
    const read: ResultDocument = JSON.parse(
      resultJson(resultDocument([exampleSession({ trials: [trial] })], defaultSettings)),
    );
    expect(read.trials[0]?.measures[0]?.value).toBe(value);
  });

  test("refuses a number that is none, naming the key", () => {
    const trial = exampleTrial("a.csv", "both", Number.NaN);
    const document = resultDocument([exampleSession({ trials: [trial] })], defaultSettings);
    expect(() => resultJson(document)).toThrow(/"value" is NaN/);
  });
});

import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { engineVersion } from "../../../core/ground/version.ts";
import { defaultSettings, settingsHash } from "../../../core/settings/settings.ts";
import { resultCsv, resultCsvColumns } from "../../../core/sheet/result-csv.ts";
import { resultDocument } from "../../../core/sheet/result-document.ts";
import { exampleSession, exampleTrial, refusedTrial } from "./example-session.ts";

const csvOf = (changes: Parameters<typeof exampleSession>[0]) =>
  resultCsv(resultDocument([exampleSession({ folder: "", ...changes })], defaultSettings));

/** A second reader: PapaParse, which follows RFC 4180. */
function read(csv: string): readonly Record<string, string>[] {
  const [header = [], ...rows] = Papa.parse(csv, { delimiter: ",", newline: "\n" }).data;
  return rows
    .filter((row) => row.length > 1)
    .map((row) => Object.fromEntries(header.map((name, index) => [name, row[index] ?? ""])));
}

describe("the long table", () => {
  test("has one row a measure, and one for a refused trial that names its findings", () => {
    const document = resultDocument([exampleSession()], defaultSettings);
    const rows = read(resultCsv(document));
    expect(rows.length).toBe(document.trials.reduce((sum, trial) => sum + Math.max(1, trial.measures.length), 0));
    const refused = rows.filter((row) => row.file?.endsWith(refusedTrial.file));
    expect(refused.map((row) => [row.status, row.id, row.value])).toEqual([["refused", "", ""]]);
    expect(refused[0]?.findings).toBe(refusedTrial.findings.map((each) => each.code).join(" "));
  });

  test("writes the row of a measure as documented", () => {
    const csv = csvOf({ trials: [exampleTrial("a/b.csv", "both", 0.261)] });
    const [header, first] = csv.split("\n");
    const { findings, sha256 } = exampleTrial("a/b.csv", "both", 0.261);
    const codes = [...new Set(findings.map((each) => each.code))].join(" ");
    expect(header).toBe(resultCsvColumns.join(","));
    expect(first).toBe(
      `a/b.csv,1,countermovementJump,both,analysed,,,,jumpHeightImpulse,both,0.261,m,0.0021,${codes},${sha256},${engineVersion},${settingsHash(defaultSettings).slice(0, 12)},`,
    );
    expect(csv.endsWith("\n")).toBe(true);
  });

  test("uses an ASCII minus and gives numbers back bit for bit", () => {
    const value = -(0.1 + 0.2); // −0.30000000000000004 by IEEE 754
    const rows = read(csvOf({ trials: [exampleTrial("a.csv", "both", value)] }));
    expect(rows[0]?.value).toBe("-0.30000000000000004");
    expect(Number(rows[0]?.value)).toBe(value);
  });

  test("leaves the uncertainty empty where none is known", () => {
    const measures = [{ id: "loadingRate", side: "both", value: 40_000, unit: "N/s" }] as const;
    const rows = read(csvOf({ trials: [exampleTrial("a.csv", "both", 0.3, { measures })] }));
    expect(rows[0]).toMatchObject({ value: "40000", uncertainty: "" });
  });

  test("quotes commas, quotes and line breaks so that a reader gets them back", () => {
    const reason = 'said "no", stepped\nagain';
    const rows = read(csvOf({ trials: [exampleTrial("a, b.csv", "both", 0.3, { excluded: { reason } })] }));
    expect(rows[0]).toMatchObject({ file: "a, b.csv", excluded: reason, status: "analysed" });
  });

  test.each(["=1+1.csv", "+a.csv", "-a.csv", "@a.csv", "\ta.csv", "\ra.csv"])(
    "keeps a spreadsheet from running the file name %j as a formula",
    (file) => {
      const rows = read(csvOf({ trials: [exampleTrial(file, "both", 0.3)] }));
      expect(rows[0]?.file).toBe(`'${file}`);
    },
  );

  test("leaves every other file name as it is", () => {
    const rows = read(csvOf({ trials: [exampleTrial("Mål/hopp–1 =2.csv", "both", 0.3)] }));
    expect(rows[0]?.file).toBe("Mål/hopp–1 =2.csv");
  });
});

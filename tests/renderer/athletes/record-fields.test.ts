import { describe, expect, test } from "vitest";
import { contentFrom, recordFields, unknownDate, writtenFields } from "../../../renderer/athletes/record-fields.ts";

describe("forms about records", () => {
  test("what a record says comes back unchanged, also what its form does not show", () => {
    const athlete = {
      code: "GH-07",
      heightMetres: 1.74,
      birthYear: 2003,
      birthDate: "2003-05-01",
      note: "back player",
    };
    expect(writtenFields("athletes", athlete).heightMetres).toBe("174");
    expect(contentFrom("athletes", writtenFields("athletes", athlete), athlete)).toEqual({ content: athlete });
    const consent = { reader: "coach", sheet: "all sheets", given: false, date: "2026-11-02" };
    expect(contentFrom("consents", writtenFields("consents", consent), consent)).toEqual({ content: consent });
  });

  test("an injury names its body part and whether it involves its side, yes and no kept as true and false", () => {
    const injury = { side: "left", structure: "sprain", date: "2026-11-16", bodyPart: "ankle", involved: false };
    const written = writtenFields("injuries", injury);
    expect([written.involved, written.bodyPart]).toEqual(["no", "ankle"]);
    expect(contentFrom("injuries", written, injury)).toEqual({ content: injury });
    const { bodyPart: _part, involved: _mark, ...before } = injury;
    expect(contentFrom("injuries", writtenFields("injuries", before), before)).toEqual({
      problem: "Body part is missing.",
    });
    expect(contentFrom("injuries", { ...written, until: "2026-11-15" }, injury)).toEqual({
      problem: "It ends before it begins: correct one of the dates.",
    });
  });

  test("an emptied field is taken away, and a decimal comma is a decimal point", () => {
    const before = { code: "A", sport: "handball" };
    const written = { ...writtenFields("athletes", before), sport: "", heightMetres: "173,5" };
    expect(contentFrom("athletes", written, before)).toEqual({ content: { code: "A", heightMetres: 1.735 } });
  });

  test("an operation has a date, or says by a choice of its own that nobody knows it", () => {
    const written = {
      side: "right",
      procedure: "reconstruction",
      date: "",
      repaired: "not known",
      bodyPart: "knee",
      involved: "yes",
    };
    expect(contentFrom("operations", written, {})).toEqual({
      problem: "Date of the operation is missing: enter it, or say that it is not known.",
    });
    const unknown = {
      side: "right",
      procedure: "reconstruction",
      repaired: "not known",
      bodyPart: "knee",
      involved: true,
    };
    expect(contentFrom("operations", { ...written, date: unknownDate }, {})).toEqual({ content: unknown });
    expect(writtenFields("operations", unknown).date).toBe(unknownDate);
    expect(writtenFields("operations", {}).date).toBe("");
    expect(contentFrom("operations", { ...written, date: unknownDate, repaired: "" }, {})).toEqual({
      problem: "Meniscus or cartilage repaired is missing.",
    });
  });

  test("each field that is needed is asked for by its label, and a number beyond its range is refused", () => {
    for (const [kind, fields] of Object.entries(recordFields)) {
      const first = fields.find(({ required }) => required);
      expect(contentFrom(kind as keyof typeof recordFields, {}, {})).toEqual({
        problem: `${first?.label} is missing.`,
      });
    }
    const written = { ...writtenFields("athletes", { code: "A" }), heightMetres: "1.74" };
    expect(contentFrom("athletes", written, {})).toEqual({ problem: "Height, cm is a number from 50 to 272." });
  });
});

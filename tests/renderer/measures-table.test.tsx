import { describe, expect, it } from "vitest";
import { measureCatalogue } from "../../core/ground/measures/catalogue.ts";
import { english } from "../../core/words/english.ts";
import { measureColumns, measureRows } from "../../renderer/traces/measure-rows.ts";
import { MeasuresTable } from "../../renderer/traces/measures-table.tsx";
import { everyMeasure, exampleTrial, shortWeighing } from "./example-session.ts";
import { markupOf } from "./render.tsx";

const plainIds = measureCatalogue.filter((entry) => entry.formOf === undefined).map((entry) => entry.id);

function shownIds(markup: string): readonly string[] {
  return [...markup.matchAll(/data-measure="([^"]+)"/g)].map((match) => match[1]!);
}

describe("the table of measures", () => {
  it("shows every plain measure of the catalogue in its order, and nothing the catalogue does not know", () => {
    expect(shownIds(markupOf(<MeasuresTable trial={exampleTrial()} involved="right" />))).toEqual(plainIds);
  });

  it("keeps every body-size form for its second part", () => {
    const rows = measureRows(exampleTrial(), true).flatMap((group) => group.rows.map((row) => row.entry.id));
    expect([...rows].sort()).toEqual(measureCatalogue.flatMap((e) => (e.formOf === undefined ? [] : e.id)).sort());
  });

  it("leaves out a measure the trial does not have, and shows a dash for one that a finding removed", () => {
    const measures = everyMeasure("both").filter(
      (measure) => !["timeToStabilisation", "limbTakeoffDifference"].includes(measure.id),
    );
    const markup = markupOf(
      <MeasuresTable trial={exampleTrial({ measures, findings: [shortWeighing] })} involved="right" />,
    );
    expect(shownIds(markup)).not.toContain("limbTakeoffDifference");
    const row = /data-measure="timeToStabilisation".*?<\/tr>/.exec(markup)?.[0];
    expect(row).toContain("–");
  });

  it("puts the involved side before the other and gives colours to an injured athlete only", () => {
    expect(measureColumns(exampleTrial(), ["right", "left"]).map(english.limbs.bearer)).toEqual([
      "both",
      "right",
      "left",
    ]);
    expect(markupOf(<MeasuresTable trial={exampleTrial()} involved="right" />)).toContain("limb-involved");
    const healthy = markupOf(<MeasuresTable trial={exampleTrial()} involved="none" />);
    expect(healthy).not.toContain("limb-involved");
    expect(healthy).toContain("limb-left");
  });

  it("has a column a plate, without a limb's colour, while nobody knows which foot stood where", () => {
    const measures = exampleTrial().measures.map(({ side, plate: _none, ...value }) =>
      side === "both" ? { ...value, side } : { ...value, plate: side === "left" ? 1 : 2 },
    );
    const markup = markupOf(<MeasuresTable trial={exampleTrial({ measures, feet: "unproved" })} involved="right" />);
    expect(markup).toContain("plate 1");
    expect(markup).toContain("plate 2");
    expect(markup).not.toMatch(/limb-(involved|uninvolved|left|right)/);
  });

  it("shows one column for a single-leg trial", () => {
    expect(measureColumns(exampleTrial({ limb: "left" }), ["right", "left"])).toEqual([{ side: "left" }]);
  });

  it("says that nothing could be made from a refused trial", () => {
    expect(
      markupOf(<MeasuresTable trial={exampleTrial({ measures: [], status: "refused" })} involved="right" />),
    ).toContain("No measure could be made");
  });
});

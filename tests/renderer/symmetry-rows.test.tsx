import { describe, expect, it } from "vitest";
import type { Comparison } from "../../core/sides/comparison.ts";
import type { ReferenceValue } from "../../core/stated/reference-value.ts";
import { english } from "../../core/words/english.ts";
import { CriteriaPanel } from "../../renderer/sides/criteria-panel.tsx";
import { criterionRows, informationRows, symmetryLine } from "../../renderer/sides/symmetry-rows.ts";
import { SymmetryTable } from "../../renderer/sides/symmetry-table.tsx";
import { stoppedGate } from "../core/gate/gates.ts";
import { exampleComparison, exampleSession } from "./example-session.ts";
import { markupOf } from "./render.tsx";

const rowsOf = (session = exampleSession()) => criterionRows(session).flatMap((group) => group.rows);

describe("the symmetry table", () => {
  it("has a row for every criterion, also where nothing was measured", () => {
    const { criteriaSet } = exampleSession();
    expect(rowsOf().map((row) => row.criterion?.criterion.id)).toEqual(
      criteriaSet.criteria
        .map((each) => each.id)
        .sort((a, b) => rowsOf().findIndex((row) => row.key === a) - rowsOf().findIndex((row) => row.key === b)),
    );
    expect(rowsOf(exampleSession({ comparisons: [] }))).toHaveLength(criteriaSet.criteria.length);
  });

  it("keeps comparisons that inform only apart", () => {
    const information = { ...exampleComparison, measure: "peakLandingForce", role: "information" } as const;
    const session = exampleSession({ comparisons: [exampleComparison, information] });
    expect(rowsOf(session).some((row) => row.comparison?.measure === "peakLandingForce")).toBe(false);
    expect(informationRows(session).flatMap((group) => group.rows)).toHaveLength(1);
  });

  it("takes the reference of the uninvolved side, as the criterion does", () => {
    const reference = (side: "left" | "right", value: number): ReferenceValue => ({
      test: "countermovementJump",
      legs: "single",
      measure: "jumpHeightImpulse",
      side,
      value,
      unit: "m",
      date: "2025-08-20",
      origin: "pre-injury",
    });
    const session = exampleSession();
    const references = [reference("right", 0.15), reference("left", 0.156)];
    const row = rowsOf({ ...session, description: { ...session.description, references } }).find(
      (each) => each.criterion?.criterion.kind === "against-reference",
    );
    expect(row?.reference?.value).toBe(0.156);
    expect(row?.label).toContain("left before the injury, 20 Aug 2025");
  });

  it("draws no threshold where nobody is injured", () => {
    const session = exampleSession({
      criteria: exampleSession().criteria.map((each) => ({ ...each, status: "not-applicable" })),
    });
    const [first] = rowsOf(session);
    expect(symmetryLine(first!)).not.toHaveProperty("threshold");
  });

  it("shows both means, the index, its interval and the words of the status on one line", () => {
    const markup = markupOf(
      <SymmetryTable
        caption="Sides"
        groups={criterionRows(exampleSession())}
        involved="right"
        lastColumn="criterion"
      />,
    );
    const row = /data-row="single-leg-countermovement-jump-height-symmetry".*?<\/tr>/.exec(markup)?.[0] ?? "";
    // by hand from the example: 0.117 m, 0.140 m, index 83.6 with 81.2 to 86.4
    for (const words of ["11.7", "14.0", "84\u00a0%", "81", "86", english.statuses.label("not-met")])
      expect(row).toContain(words);
  });

  const impulse: Comparison = {
    ...exampleComparison,
    legs: "both",
    measure: "brakingImpulse",
    unit: "N.s",
    first: { side: "right", values: [78.8], mean: 78.8, meanPerBodyMass: 1.14 },
  };

  it("writes values per body mass with their whole unit", () => {
    const markup = markupOf(
      <SymmetryTable
        caption="Sides"
        groups={criterionRows(exampleSession({ comparisons: [impulse] }))}
        involved="right"
        lastColumn="criterion"
      />,
    );
    expect(markup).toContain("1.14\u00a0N·s/kg");
  });

  it.each([
    ["contradicted", "feet contradicted"],
    ["unproved", "feet unproved"],
  ] as const)("tells plates instead of sides in a row whose feet are %s", (plates, words) => {
    const { index: _index, ...none } = impulse;
    const byPlate = { first: { plate: 1, values: [78.8], mean: 78.8 }, second: { plate: 2, values: [90], mean: 90 } };
    const session = exampleSession({ comparisons: [{ ...none, ...byPlate, basis: "plates", intervals: [], plates }] });
    const markup = markupOf(
      <SymmetryTable caption="Sides" groups={criterionRows(session)} involved="right" lastColumn="criterion" />,
    );
    expect(markup.match(new RegExp(words, "g"))).toHaveLength(1);
    expect(markup).toContain('class="in-doubt"');
    expect(markup).toContain(">plate 1</th>");
    expect(markup).toContain(">plate 2</th>");
    expect(markup).not.toMatch(/limb-(involved|uninvolved|left|right)/);
    const row = /<tr data-row="[^"]*" class="in-doubt">.*?<\/tr>/.exec(markup)?.[0] ?? "";
    expect(row).toContain("78.8");
    expect(row).not.toMatch(/limb-(involved|uninvolved|left|right)|per-mass/);
  });
});

it("gives a group by plate headings of its own where the table's columns are sides", () => {
  const { index: _index, ...none } = exampleComparison;
  const byPlate: Comparison = {
    ...none,
    legs: "both",
    measure: "brakingImpulse",
    unit: "N.s",
    basis: "plates",
    plates: "unproved",
    first: { plate: 1, values: [78.8], mean: 78.8 },
    second: { plate: 2, values: [90], mean: 90 },
    intervals: [],
  };
  const session = exampleSession({ comparisons: [exampleComparison, byPlate] });
  const markup = markupOf(
    <SymmetryTable caption="Sides" groups={criterionRows(session)} involved="right" lastColumn="criterion" />,
  );
  const heads = [...markup.matchAll(/<th scope="col" class="number[^"]*">(?:<[^>]*>)*([^<]*)</g)].map(
    ([, words]) => words,
  );
  expect(heads).toEqual(["right, involved", "left, uninvolved", "index, 80\u00a0% interval", "plate 1", "plate 2"]);
});

describe("the criteria panel", () => {
  it("names the set with its version and shows each status with a word beside its mark", () => {
    const markup = markupOf(<CriteriaPanel session={exampleSession()} />);
    expect(markup).toContain("Return to pivoting sport");
    expect(markup.match(/class="status-mark"/g)).toHaveLength(exampleSession().criteria.length);
    expect(markup).toContain("not met");
  });

  it("says beside a status that needs it why it is so, in one sentence", () => {
    const criteria = exampleSession().criteria.map((each) => ({
      ...each,
      status: "not-measured" as const,
      reason: "One more trial of the left leg is needed. The protocol allows six.",
    }));
    const markup = markupOf(<CriteriaPanel session={exampleSession({ criteria })} />);
    expect(markup.match(/One more trial of the left leg is needed\./g)).toHaveLength(criteria.length);
    expect(markup).not.toContain("The protocol allows six");
  });

  it("withholds statuses in words when the gate is closed", () => {
    const closed = exampleSession({ gate: stoppedGate("effusion 1+") });
    const markup = markupOf(<CriteriaPanel session={closed} />);
    expect(markup).toContain("Every jump test is closed today.");
    expect(markup.match(/The session was stopped: effusion 1\+\./g)).toHaveLength(1);
  });

  it("says of each withheld criterion why, where tests are closed singly, and shows the knee's own rows", () => {
    const reason = "Pain 3 of 10 is above the limit.";
    const closure = { code: "pain", level: 3, loads: ["singleLegJump"], reason, openedBy: "clinician" } as const;
    const gate = { ...exampleSession().gate, open: true, closures: [closure] };
    const withheld = exampleSession().criteria.map((each) => ({
      ...each,
      status: "withheld-today" as const,
      reason,
    }));
    const knee = [
      {
        id: "pain-of-the-day",
        short: "pain 3",
        label: "Pain",
        threshold: "at most 2 of 10",
        status: "not-met",
        reason,
      },
    ] as const;
    const markup = markupOf(<CriteriaPanel session={exampleSession({ criteria: withheld, gate, knee })} />);
    expect(markup).toContain("Some tests are closed today.");
    expect(markup.split(reason)).toHaveLength(2 + withheld.length + knee.length);
    expect(markup).toContain("not met");
  });
});

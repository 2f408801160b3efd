import { describe, expect, test } from "vitest";
import { testLoad, testLoads } from "../../../core/gate/test-load.ts";
import { courses } from "../../../core/ground/test-course.ts";
import { kindOfTrace, testFacts, testKinds } from "../../../core/ground/test-kind.ts";
import { testsWith } from "../../../core/ground/test-traits.ts";
import { expectedMeasures } from "../../../core/measures/expected-measures.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import { alignmentsOf } from "../../../core/sides/curves.ts";
import { english } from "../../../core/words/english.ts";
import { headlineOf } from "../../../renderer/shell/headline.ts";

describe.each(testKinds)("the facts of %s", (kind) => {
  const facts = testFacts(kind);
  const measures = expectedMeasures(kind, true);

  test("say by what it is judged and told at a glance, which it then measures", () => {
    const { id, beside } = headlineOf(kind);
    expect(measures).toEqual(
      expect.arrayContaining([facts.judgedBy, id, ...(beside === undefined ? [] : [beside.id])]),
    );
    expect(measures).toContain("bodyWeight");
  });

  test("give it a load on two legs and on one, and events at which its curves are aligned", () => {
    for (const legs of ["both", "single"] as const) expect(testLoads).toContain(testLoad({ test: kind, legs }));
    expect(alignmentsOf(kind).length).toBeGreaterThan(0);
  });

  test("hold it off before the operation, on two legs and on one", () => {
    const held = shippedProtocol("pre-operative")!.notYet.filter((each) => each.test === kind);
    expect(held.map(({ legs }) => legs)).toEqual(["both", "single"]);
  });

  test("make it a variant only of a kind with the same course, that a trace is offered as", () => {
    if (facts.variantOf === undefined) return expect(kindOfTrace(facts.course)).toBe(kind);
    expect(testFacts(facts.variantOf).course).toBe(facts.course);
    expect(kindOfTrace(facts.course)).toBe(facts.variantOf);
  });
});

test("every course is taken by some kind, and every kind has a name of its own", () => {
  const taken = new Set(testKinds.map((kind) => testFacts(kind).course));
  expect([...taken].sort()).toEqual(Object.keys(courses).sort());
  expect(new Set(testKinds.map(english.tests.label)).size).toBe(testKinds.length);
});

test("a countermovement jump with arm swing has what one without has", () => {
  expect(testsWith("dip")).toEqual(["countermovementJump", "countermovementJumpArmSwing"]);
  expect(expectedMeasures("countermovementJumpArmSwing", true)).toEqual(expectedMeasures("countermovementJump", true));
});

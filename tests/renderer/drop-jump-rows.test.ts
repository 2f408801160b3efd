import { describe, expect, test } from "vitest";
import { criterionRows, informationRows, symmetryLine } from "../../renderer/sides/symmetry-rows.ts";
import { analyzeSamples } from "../core/simulated/session.ts";

const { result } = analyzeSamples("maren-tveitlund/6-month-11");
const groups = criterionRows(result);
const group = (title: RegExp) => groups.find((each) => title.test(each.title));

describe("the rows of drop jumps", () => {
  test("stand in groups that name the box", () => {
    expect(group(/from 0\.30/)?.rows.map((row) => row.key)).toEqual([
      "drop-jump-braking-impulse-symmetry",
      "drop-jump-propulsion-impulse-symmetry",
      "drop-jump-reactive-strength-index",
    ]);
    expect(informationRows(result).some((each) => /from 0\.20/.test(each.title))).toBe(true);
  });

  test("that ask for a value show both legs, no index and no line", () => {
    const row = groups
      .flatMap((each) => each.rows)
      .find((each) => each.key === "single-leg-drop-jump-reactive-strength-index");
    expect(row?.label).toBe("Reactive strength index, against a set value");
    expect(row?.comparison?.first.values).toHaveLength(4);
    expect(row?.index).toBeUndefined();
    if (row === undefined) return;
    expect(symmetryLine(row)).toBeUndefined();
  });

  test("still show the index of the same measure, which no criterion of the set reads", () => {
    const indices = groups.flatMap((each) => each.rows).filter((row) => row.label === "Reactive strength index");
    expect(indices).toHaveLength(1);
    expect(indices[0]?.criterion).toBeUndefined();
    expect(indices[0]?.index).toBeGreaterThan(80);
  });

  test("have keys of their own", () => {
    const keys = [...groups, ...informationRows(result)].flatMap((each) => each.rows.map((row) => row.key));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

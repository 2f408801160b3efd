import { expect, test } from "vitest";
import { assignTrial } from "../../../core/trial/assign-trial.ts";
import { told } from "../../told.ts";

const codes = (path: string, ...rest: [Parameters<typeof assignTrial>[1], Parameters<typeof assignTrial>[2]]) => {
  const { test: kind, limb, findings } = assignTrial(path, ...rest);
  return { kind, limb, codes: findings.map((each) => each.code) };
};

test("What was stated outranks the file name and needs no note", () => {
  const stated = { test: "countermovementJump", limb: "left" } as const;
  expect(codes("drop-jump-right.csv", stated, undefined)).toEqual({
    kind: "countermovementJump",
    limb: "left",
    codes: [],
  });
});

test.each([
  ["countermovement-both-1.csv", "both"],
  ["folder/Countermovement Jump LEFT 2.txt", "left"],
  ["CMJ_right_03.csv", "right"],
  ["countermovementTwoLegs.csv", "both"],
])("The file name %s has one reading and is said to be the source", (path, limb) => {
  expect(codes(path, {}, undefined)).toEqual({ kind: "countermovementJump", limb, codes: ["test-from-name"] });
});

test.each([
  ["Tiefsprung beidbeinig 30cm.csv", "dropJump", "both"],
  ["Hüpfer rechts 2.txt", "repeatedHops", "right"],
  ["Kniebeugesprung_links.csv", "squatJump", "left"],
  ["saut en contrebas gauche.csv", "dropJump", "left"],
  ["Contramovimiento derecha 1.csv", "countermovementJump", "right"],
  ["Gegenbewegungssprung zweibeinig.csv", "countermovementJump", "both"],
  ["depth jump left.csv", "dropJump", "left"],
  ["depth-landing_right_2.csv", "dropLanding", "right"],
  ["rebounds both.csv", "repeatedHops", "both"],
  ["contromovimento left.csv", "countermovementJump", "left"],
])("The file name %s is read in its own language", (path, kind, limb) => {
  expect(codes(path, {}, undefined)).toEqual({ kind, limb, codes: ["test-from-name"] });
});

test.each(["Einbeinsprung 3.csv", "Sprung.csv", "hupferlgasse.csv", "rechtsanwalt.csv"])(
  "The file name %s names no test and no leg",
  (path) => {
    expect(codes(path, {}, undefined)).toEqual({ kind: undefined, limb: undefined, codes: ["test-not-stated"] });
  },
);

test("A name with two readings decides nothing: the trial is refused with what to give", () => {
  const { kind, limb, codes: found } = codes("countermovement-and-drop-jump-left-right.csv", {}, undefined);
  expect(kind).toBeUndefined();
  expect(limb).toBeUndefined();
  expect(found).toEqual(["test-not-stated"]);
});

test("On two plates the loaded plate tells the limb", () => {
  const assigned = assignTrial("trial 7.csv", { test: "countermovementJump" }, "right");
  expect(assigned.limb).toBe("right");
  expect(assigned.limbFromPlates).toBe(true);
  expect(assigned.findings).toEqual([]);
});

test("On one plate an unstated limb is refused and the option named", () => {
  const { findings } = assignTrial("trial 7.csv", { test: "countermovementJump" }, undefined);
  expect(findings.map((each) => [each.code, each.severity])).toEqual([["limb-not-stated", "refusal"]]);
  expect(told(findings[0])?.action).toBe("Choose the limb.");
  expect(findings[0]?.answers).toEqual([{ limb: "both" }, { limb: "left" }, { limb: "right" }]);
});

test("What the trace looks like is offered with its reason where nothing names the test, and decides nothing", () => {
  const recognised = {
    test: "dropJump",
    trace: { seen: "contact", before: "empty plate", contactSeconds: 0.21, flightSeconds: 0.52 },
  } as const;
  const { test: kind, findings } = assignTrial("trial.csv", { limb: "both" }, undefined, recognised);
  expect(kind).toBeUndefined();
  expect(findings.map((each) => each.code)).toEqual(["test-not-stated"]);
  expect(told(findings[0])?.message).toContain("a drop jump: empty plate, contact 0.21 s, flight 0.52 s");
  expect(told(findings[0])?.action).toBe("Choose the test.");
  expect(findings[0]?.answers[0]).toEqual({ test: "dropJump" });
});

test("A trace that no test is offered for says why where a test is asked for", () => {
  const { findings } = assignTrial("trial.csv", { limb: "both" }, undefined, {
    against: { why: "refused", test: "dropJump" },
  });
  expect(told(findings[0])?.message).toBe(
    "Nothing says which jump test this is; the trace is offered as none: as a drop jump it would be refused.",
  );
});

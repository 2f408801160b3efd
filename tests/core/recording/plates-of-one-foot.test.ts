import { expect, test } from "vitest";
import { told } from "../../told.ts";
import { jumpText } from "./jump-text.ts";
import { codesOf, readText } from "./recording-text.ts";

const shares = [150, 200, 145, 199];
const named = "time (s),Left heel (N),Left forefoot (N),Right heel (N),Right forefoot (N)";

test("heel and forefoot plates of each foot are added, and that is said", () => {
  const read = readText(jumpText(named, shares));
  expect(codesOf(read)).toEqual(["plates-summed:note", "plates-summed:note"]);
  expect(read.recording?.plates.map(({ name, limb }) => [name, limb])).toEqual([
    ["Left heel + Left forefoot", "left"],
    ["Right heel + Right forefoot", "right"],
  ]);
  // By hand: 1.8 body weights of 150 + 200 N in the push, up to the ripple of a thousandth of it.
  const rippleNewtons = 0.001 * 350;
  expect(Math.abs((read.recording?.plates[0]?.force[1300] ?? 0) - 1.8 * 350)).toBeLessThan(rippleNewtons);
  expect(read.reading?.columns.map(({ limb }) => limb)).toEqual([undefined, "left", "left", "right", "right"]);
});

test.each([
  ["German", "Zeit (s),Links Ferse (N),Links Vorfuß (N),Rechts Ferse (N),Rechts Vorfuß (N)"],
  ["French", "Temps (s),Gauche talon (N),Gauche avant (N),Droite talon (N),Droite avant (N)"],
])("in %s as well", (_, header) => {
  expect(readText(jumpText(header, shares)).recording?.plates).toHaveLength(2);
});

test("a total beside the four plates is compared with their sum", () => {
  expect(codesOf(readText(jumpText(`${named},Total (N)`, [...shares, 694])))).toEqual([
    "plates-summed:note",
    "plates-summed:note",
  ]);
  expect(codesOf(readText(jumpText(`${named},Total (N)`, [...shares, 760])))).toContain("columns-disagree:warning");
});

test.each([
  ["time (s),L1 (N),L2 (N),R1 (N),R2 (N)"],
  ["time (s),Left raw (N),Left filtered (N),Right raw (N),Right filtered (N)"],
  ["time (s),Left heel (N),Left forefoot (kN),Right heel (N),Right forefoot (kN)"],
  ["time (s),Left heel (N),Left forefoot (N),Right heel (N),Right toe (N)"],
])("columns named %j may be plates to add or readings to choose from: asked, with both answers", (header) => {
  const read = readText(jumpText(header, shares));
  expect(codesOf(read)).toEqual(["columns-unclear:refusal"]);
  expect(told(read.findings[0])?.action).toContain("their sum, or the one that counts");
  expect(read.findings[0]?.answers).toEqual([
    { columns: { left: "2+3", right: "4+5" } },
    { columns: { left: 2, right: 4 } },
    { columns: { left: 3, right: 5 } },
  ]);
});

test("columns to add are stated with plus signs, by position or by name", () => {
  const text = jumpText("time (s),L1 (N),L2 (N),R1 (N),R2 (N)", shares);
  const byPosition = readText(text, { left: "2+3", right: "4 + 5", platesStated: true });
  const byName = readText(text, { left: "L1+L2", right: "R1 + R2", platesStated: true });
  expect(byPosition.recording).toEqual(byName.recording);
  expect(byPosition.recording?.plates.map(({ name, proof }) => [name, proof])).toEqual([
    ["L1 + L2", "stated"],
    ["R1 + R2", "stated"],
  ]);
  expect(readText(text, { total: "2+3+4+5" }).recording?.plates).toMatchObject([{ limb: "both" }]);
});

test.each([
  [{ left: "2+2", right: "4+5" }, "stated twice"],
  [{ left: "2+3", right: "3+5" }, "stated twice"],
  [{ left: "2+9", right: "4+5" }, "There is no column"],
  [{ time: "1+2", left: 3, right: 4 }, "Time cannot be the sum"],
])("the statement %j is refused with the reason", (answers, sentence) => {
  const read = readText(jumpText("time (s),L1 (N),L2 (N),R1 (N),R2 (N)", shares), answers);
  expect(codesOf(read)).toEqual(["columns-unclear:refusal"]);
  expect(told(read.findings[0])?.message).toContain(sentence);
});

test("a name that holds a plus sign is a name", () => {
  const read = readText(jumpText("time (s),A+B (N),C (N)", [350, 340]), { left: "A+B", right: "C" });
  expect(read.recording?.plates.map(({ name }) => name)).toEqual(["A+B", "C"]);
});

test("exchanged plates change their feet and nothing else, count as stated, and exchange back", () => {
  const text = jumpText("time (s),left (N),right (N)", [350, 340]);
  const plain = readText(text);
  const swapped = readText(text, { swapPlates: true });
  expect(codesOf(swapped)).toEqual(["plates-swapped:note"]);
  expect(swapped.recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
    ["left", "right", "stated"],
    ["right", "left", "stated"],
  ]);
  expect(swapped.recording?.plates.map(({ force }) => force)).toEqual(
    plain.recording?.plates.map(({ force }) => force),
  );
  const stated = readText(text, { left: "right", right: "left", swapPlates: true });
  expect(stated.recording?.plates.map(({ limb }) => limb)).toEqual(["left", "right"]);
  expect(codesOf(readText(jumpText("time (s),total (N)", [700]), { swapPlates: true }))).toEqual([
    "plates-swapped:warning",
  ]);
});

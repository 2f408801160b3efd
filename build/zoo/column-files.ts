import { jumpMassKg, newtonsAt, shortRows, wholeRows } from "./small-jump.ts";
import { cellsOf, forceColumn, otherColumn, plainColumns, timeColumn, type ZooColumn } from "./table-columns.ts";
import { tableFile } from "./write-table.ts";
import type { ZooFile } from "./zoo-file.ts";

/** Standard gravity, and the units of force that are exact by definition. */
const gravity = 9.80665;
const newtonsInPound = 4.4482216152605;

const pair = (rows: number, unit: string, factor: number, decimals: number): readonly ZooColumn[] => [
  timeColumn("time (s)", rows),
  forceColumn(`left (${unit})`, "left", rows, { unit, factor, decimals }),
  forceColumn(`right (${unit})`, "right", rows, { unit, factor, decimals }),
];

function units(): readonly ZooFile[] {
  const weight = jumpMassKg * gravity;
  const mass = [`Body mass: ${jumpMassKg} kg`];
  const fromMass = { findings: ["unit-from-mass:note"] };
  const volts = pair(shortRows, "V", 200, 4).map((column) => ({ ...column, role: "force" as const }));
  return [
    tableFile("kilonewtons.csv", pair(wholeRows, "kN", 1000, 5)),
    tableFile("kilograms-force.csv", pair(wholeRows, "kgf", gravity, 3), { delimiter: ";", decimalMark: "," }),
    tableFile("pounds-force.csv", pair(wholeRows, "lbf", newtonsInPound, 3), { delimiter: "\t" }),
    tableFile("body-weights-with-mass.csv", pair(wholeRows, "BW", weight, 5), { above: mass }, fromMass),
    tableFile("percent-of-body-weight.csv", pair(shortRows, "%BW", weight / 100, 3), { above: mass }, fromMass),
    tableFile("newtons-a-kilogram.csv", pair(shortRows, "N/kg", jumpMassKg, 4), { above: mass }, fromMass),
    tableFile(
      "body-weights-without-mass.csv",
      pair(shortRows, "BW", weight, 5),
      {},
      {
        outcome: "asks",
        findings: ["mass-missing:refusal"],
        answers: { massKg: jumpMassKg },
        answeredFindings: ["unit-from-mass:note"],
      },
    ),
    tableFile(
      "volts.csv",
      volts.map((column, index) => (index === 0 ? { ...column, role: "time" } : column)),
      {},
      { outcome: "asks", findings: ["unit-not-stated:refusal", "unit-not-stated:refusal"] },
    ),
    tableFile(
      "unit-silent.csv",
      [timeColumn("time", shortRows), forceColumn("left", "left", shortRows), forceColumn("right", "right", shortRows)],
      {},
      { outcome: "asks", findings: ["unit-not-stated:refusal"], answers: { unit: "N" } },
    ),
    tableFile(
      "unit-implausible.csv",
      [timeColumn("time (s)", wholeRows), forceColumn("left (kN)", "left", wholeRows)],
      {},
      {
        outcome: "asks",
        findings: ["weight-implausible:refusal"],
        answers: { unit: "N" },
        answeredFindings: ["unit-contradicts:warning"],
      },
    ),
  ];
}

function signsAndSums(): readonly ZooFile[] {
  const time = timeColumn("time (s)", shortRows);
  const down = (limb: "left" | "right") => forceColumn(`${limb} (N)`, limb, shortRows, { isDownward: true });
  const left = forceColumn("left (N)", "left", shortRows);
  const right = forceColumn("right (N)", "right", shortRows);
  const total = forceColumn("total (N)", "both", shortRows);
  const doubled = { ...total, cells: cellsOf(shortRows, (row) => (1.2 * newtonsAt("both", row)).toFixed(2)) };
  const foot = (limb: "left" | "right", part: string, share: number) =>
    forceColumn(`${limb} ${part} (N)`, limb, shortRows, { share });
  return [
    tableFile("downward-positive.csv", [time, down("left"), down("right")], {}, { findings: ["sign-turned:note"] }),
    tableFile("left-right-total.csv", [time, left, right, total], { delimiter: ";" }),
    tableFile("total-disagrees.csv", [time, left, right, doubled], {}, { findings: ["columns-disagree:warning"] }),
    tableFile("total-alone.csv", [time, total], { delimiter: "\t" }),
    tableFile("left-and-total.csv", [time, left, total], {}, { findings: ["plate-derived:note"] }),
    tableFile("left-alone.csv", [time, left]),
    tableFile(
      "two-plates-a-foot.csv",
      [
        time,
        foot("left", "heel", 0.4),
        foot("left", "forefoot", 0.6),
        foot("right", "heel", 0.3),
        foot("right", "forefoot", 0.7),
      ],
      {},
      { findings: ["plates-summed:note", "plates-summed:note"] },
    ),
    tableFile(
      "two-plates-a-foot-numbered.csv",
      [time, foot("left", "1", 0.4), foot("left", "2", 0.6), foot("right", "3", 0.3), foot("right", "4", 0.7)],
      {},
      {
        outcome: "asks",
        findings: ["columns-unclear:refusal"],
        answers: { left: "2+3", right: "4+5" },
        answeredFindings: ["plates-summed:note", "plates-summed:note"],
      },
    ),
    tableFile("right-before-left.csv", [time, right, left]),
    tableFile(
      "plates-exchanged.csv",
      [time, left, right],
      {},
      { answers: { swapPlates: true }, answeredFindings: ["plates-swapped:note"] },
    ),
    tableFile(
      "same-name-twice.csv",
      [time, { ...left, name: "Fz (N)" }, { ...right, name: "Fz (N)" }],
      {},
      { outcome: "asks", findings: ["columns-unclear:refusal"], answers: { left: 2, right: 3 } },
    ),
    tableFile(
      "plates-numbered.csv",
      [time, { ...right, name: "Plate 1 (N)" }, { ...left, name: "Plate 2 (N)" }],
      { delimiter: ";" },
      { outcome: "asks", findings: ["columns-unclear:refusal"], answers: { left: 3, right: 2 } },
    ),
  ];
}

function besideForces(): readonly ZooFile[] {
  const time = timeColumn("time (s)", shortRows);
  const [, left, right] = plainColumns(shortRows) as readonly [ZooColumn, ZooColumn, ZooColumn];
  const axis = (name: string, middle: number) => otherColumn(`${name} (N)`, shortRows, "N", middle);
  const fz = (name: string, limb: "left" | "right" | "both") => forceColumn(`${name} (N)`, limb, shortRows);
  const pulse: ZooColumn = {
    name: "trigger",
    role: "unused",
    unit: "",
    cells: cellsOf(shortRows, (row) => (row === 30 ? "5" : "0")),
  };
  const words: ZooColumn = {
    name: "phase",
    role: "unused",
    unit: "",
    cells: cellsOf(shortRows, (row) => (row < 80 ? "quiet" : "moving")),
  };
  const weight = otherColumn("body weight (N)", shortRows, "N");
  return [
    tableFile("three-axes.csv", [time, axis("Fx", 1), axis("Fy", 2), fz("Fz", "both")]),
    tableFile("three-axes-two-plates.csv", [
      time,
      axis("left Fx", 1),
      axis("left Fy", 2),
      fz("left Fz", "left"),
      axis("right Fx", -1),
      axis("right Fy", 2),
      fz("right Fz", "right"),
    ]),
    tableFile(
      "three-axes-numbered.csv",
      [time, axis("Fx1", 1), axis("Fy1", 2), fz("Fz1", "left"), axis("Fx2", -1), axis("Fy2", 2), fz("Fz2", "right")],
      { delimiter: ";" },
      { outcome: "asks", findings: ["columns-unclear:refusal"], answers: { left: 4, right: 7 } },
    ),
    tableFile("muscle-beside.csv", [time, left, right, otherColumn("EMG quadriceps (mV)", shortRows, "mV", 0.2)]),
    tableFile("temperature-beside.csv", [time, left, right, otherColumn("temperature (°C)", shortRows, "°C")]),
    tableFile("marker-beside.csv", [time, otherColumn("marker x (mm)", shortRows, "mm", 430), left, right]),
    tableFile("trigger-beside.csv", [time, left, right, pulse], { delimiter: ";" }),
    tableFile("words-beside.csv", [time, words, left, right], { delimiter: ";", decimalMark: "," }),
    tableFile("weight-beside.csv", [time, left, right, { ...weight, cells: cellsOf(shortRows, () => "666.9") }]),
    tableFile(
      "plates-side-by-side.csv",
      [
        { ...time, nameAbove: "left plate" },
        { ...left, name: "Fz (N)", nameAbove: "left plate" },
        { name: "", nameAbove: "", role: "unused", unit: "", cells: cellsOf(shortRows, () => "") },
        { ...time, role: "unused", nameAbove: "right plate" },
        { ...right, name: "Fz (N)", nameAbove: "right plate" },
      ],
      { delimiter: ";" },
    ),
    tableFile("pressure-centre-beside.csv", [time, left, otherColumn("CoP x left (mm)", shortRows, "mm", 3), right]),
  ];
}

/** Files that differ in what their columns hold. */
export function columnFiles(): readonly ZooFile[] {
  return [...units(), ...signsAndSums(), ...besideForces()];
}

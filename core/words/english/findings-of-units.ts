import type { UnitFindings } from "../../ground/findings/unit-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { lineInWords, sourceInWords } from "./file-parts-in-words.ts";

const stateUnit = "State the unit: N, kN, kgf or lbf.";
const leaveUnitOut = "Leave the stated unit out, or correct the file's header.";

/** What is said of the unit and the sign of the forces of a table, and of the mass behind them. */
export const findingsOfUnits: FindingSentences<UnitFindings> = {
  "mass-missing": () => ({
    message: "The forces are given in body weights or per kilogram, which are no newtons without the athlete's mass.",
    action: "State the body mass.",
  }),
  "unit-from-mass": ({ massKg, source }) => ({
    message: `Body weights were turned into newtons with a mass of ${massKg} kg (${sourceInWords(source)}); body mass measured from them only repeats it.`,
    action: "Check the mass, or export the recording in newtons.",
  }),
  "unit-not-stated/columns": ({ columns }) => {
    const names = columns.map(({ name, unit }) => (unit === "" ? name : `${name} (${unit})`));
    return {
      message: `The file does not say in which unit of force ${names.length === 1 ? "its column is" : "its columns are"}: ${names.join(", ")}.`,
      action: names.some((name) => /\(kgs?\)$/i.test(name))
        ? "State the unit: kgf where kilograms on the plate are meant, else N, kN or lbf."
        : stateUnit,
    };
  },
  "unit-not-stated/voltage": ({ name, unit }) => ({
    message: `Column ${name} is a voltage (${unit}); without its scale it says nothing about force.`,
    action: "Export the recording in newtons.",
  }),
  "unit-contradicts/column": ({ name, unit, stated }) => ({
    message: `Column ${name} says ${unit}, but ${stated} was stated.`,
    action: leaveUnitOut,
  }),
  "unit-contradicts/line": ({ unit, line, stated }) => ({
    message: `The header says ${unit} (${lineInWords(line)}), but ${stated} was stated.`,
    action: leaveUnitOut,
  }),
  "unit-contradicts/column-and-line": ({ name, unit, lineUnit, line }) => ({
    message: `Column ${name} says ${unit}, but the header says ${lineUnit} (${lineInWords(line)}).`,
    action: stateUnit,
  }),
  "unit-contradicts/overruled": ({ unit, stated }) => ({
    message: `The file says ${unit}, in which nobody could stand on the plates; ${stated} was used as stated.`,
    action: "Correct the unit where the file is exported.",
  }),
  "weight-implausible/load": ({ unit, isStated, figure, massKg, likely, mayBeVolts }) => {
    const readings = likely.map((each) => `${each.unit} (${kilograms(each.massKg)})`);
    const would = [...readings, ...(mayBeVolts ? ["volts"] : [])];
    const volts = mayBeVolts ? "; volts must be exported in newtons" : "";
    return {
      message: `The forces are ${isStated ? "stated as" : "called"} ${unit}, but standing shows ${Number(figure.toPrecision(3))} ${unit}, which would be an athlete of ${kilograms(massKg)}${would.length === 0 ? "" : `; the figures may be ${would.join(" or ")}`}.`,
      action:
        likely.length === 0
          ? "Export the recording in newtons, or check what the columns hold."
          : `State the unit the figures are in${volts}.`,
    };
  },
  "weight-implausible/mass": ({ massKg, source, leastKg, mostKg }) => ({
    message: `A mass of ${massKg} kg (${sourceInWords(source)}) is outside ${leastKg} to ${mostKg} kg.`,
    action: "State the body mass.",
  }),
  "weight-differs/header": ({ headerKg, source, massKg }) => ({
    message: `The header says ${headerKg} kg (${sourceInWords(source)}), but ${massKg} kg was stated and used.`,
    action: "Check the mass: every force of this file hangs on it.",
  }),
  "sign-turned/columns": ({ names }) => ({
    message: `${names.length === 1 ? "Column" : "Columns"} ${names.join(" and ")} counted downward force as positive and ${names.length === 1 ? "was" : "were"} turned.`,
    action: "Check that standing still shows body weight upwards.",
  }),
};

function kilograms(massKg: number): string {
  return `${massKg < 10 ? Number(massKg.toPrecision(1)) : Math.round(massKg)} kg`;
}

import type { ColumnFindings } from "../../ground/findings/column-findings.ts";
import type { FindingSentences, Told } from "../finding-sentences.ts";
import { columnInWords, columnsInWords, sourceInWords } from "./file-parts-in-words.ts";

const stateColumns = "State which column is which.";
const oneTimeBase = "Export the plates on one time base, or state which column is time.";

/** What is said of the columns of a table and its rows. */
export const findingsOfColumns: FindingSentences<ColumnFindings> = {
  "layout-unclear/several-fit": ({ names }) => ({
    message: `Saved layouts ${names.map((name) => `"${name}"`).join(" and ")} fit this file and say different things; none was applied.`,
    action: "Remove one of them, or state columns, rate and unit for this file.",
  }),
  "layout-unclear/little-known": ({ name }) => ({
    message: `The file names nothing, so that the layout "${name}" was applied by the look of its rows alone.`,
    action: "Check that rate, unit and columns are those of this file.",
  }),
  "columns-unclear/name-twice": ({ key, positions }) =>
    unclear(`Several columns are called "${key}" (${positions.join(", ")}); state the position.`),
  "columns-unclear/no-such-column": ({ key, columns }) =>
    unclear(`There is no column "${key}"; the file has ${columns.map(columnInWords).join(", ")}.`),
  "columns-unclear/text": ({ column }) => unclear(`Column ${columnInWords(column)} holds text, not numbers.`),
  "columns-unclear/stated-twice": ({ position }) => unclear(`Column ${position} was stated twice.`),
  "columns-unclear/time-summed": () => unclear("Time cannot be the sum of several columns."),
  "columns-unclear/no-numbers": ({ column }) => unclear(`Column ${columnInWords(column)} holds no numbers.`),
  "columns-unclear/several-totals": ({ columns }) =>
    unclear(`Several columns could be the total force: ${columnsInWords(columns)}.`),
  "columns-unclear/sideways": ({ vertical, loaded }) =>
    unclear(
      `Column ${columnInWords(vertical)} is called vertical, but column ${columnInWords(loaded)} carries the load: either the vertical axis of this file has another name, or its columns are mixed up.`,
    ),
  "columns-unclear/several-of-side": ({ side, columns }) => ({
    message: `Several columns could be the ${side} plate: ${columnsInWords(columns)}. They may be plates under one foot, which are added, or several readings, of which one counts.`,
    action: "State which column is which: their sum, or the one that counts; the other side likewise.",
  }),
  "columns-unclear/unexplained": ({ columns }) => unclear(`It is not clear what ${columnsInWords(columns)} holds.`),
  "columns-unclear/no-force": () => unclear("No column could be a vertical force."),
  "columns-unclear/which-plate": ({ columns, sum, isPair }) => ({
    message: `It is not clear which plate each column is: ${columnsInWords(columns)}.${sum === undefined ? "" : ` Column ${columnInWords(sum)} is the sum of the others.`}${isPair ? " Either can be the left foot's." : ""}`,
    action: isPair
      ? "State which column is which, or take their sum where nobody knows the feet."
      : "State which column is which; columns that belong together are added.",
  }),
  "plates-swapped/no-foot": () => ({
    message: "The plates were stated to be exchanged, but no column is the plate of one foot alone.",
    action: "Take the statement away, or state which column is which.",
  }),
  "plates-swapped/exchanged": ({ left, right }) => {
    const now = [
      ...(left.length > 0 ? [`${columnsInWords(left)} is left`] : []),
      ...(right.length > 0 ? [`${columnsInWords(right)} is right`] : []),
    ];
    return {
      message: `Left and right were exchanged as stated: ${now.join(", ")}.`,
      action: "Check with a single-leg trial which foot stood on which plate.",
    };
  },
  "time-left-out": ({ column, source }) => ({
    message: `The time in column ${columnInWords(column)} was not used, as ${sourceInWords(source)}; missing samples cannot be seen without it.`,
    action: "Use the time column where it can be trusted.",
  }),
  "cells-unreadable/no-row": () => ({
    message: "No row holds a number in every column that is needed.",
    action: "Export the recording again, or state other columns.",
  }),
  "cells-unreadable/inside": ({ cells, count }) => {
    const places = cells.map(
      ({ line, column: { name, position }, text }) =>
        `line ${line}, column ${name === "" ? position : name} (${text === "" ? "empty" : `"${text}"`})`,
    );
    const more = count > cells.length ? ` and ${count - cells.length} more` : "";
    return {
      message: `Inside the recording no number stands in ${places.join("; ")}${more}.`,
      action: "Export the recording again; no value is put in the place of a missing one.",
    };
  },
  "cells-unreadable/ends": ({ rowsAtStart, rowsAtEnd, firstLine }) => {
    const parts = [
      ...(rowsAtStart > 0 ? [`${rowsInWords(rowsAtStart)} at the start`] : []),
      ...(rowsAtEnd > 0 ? [`${rowsInWords(rowsAtEnd)} at the end`] : []),
    ];
    return {
      message: `${parts.join(" and ")} without readable numbers (from line ${firstLine}) ${rowsAtStart + rowsAtEnd === 1 ? "was" : "were"} left out.`,
      action: "Export the recording again if the missing part matters.",
    };
  },
  "plates-summed": ({ limb, names }) => ({
    message: `${limb === "both" ? "The plates" : `The plates under the ${limb} foot`} were added: ${names.join(" + ")}.`,
    action: "Check that these columns are plates under one foot, and not several readings of one plate.",
  }),
  "plate-derived": ({ limb, total, side }) => ({
    message: `The ${limb} plate was calculated as ${total} less ${side}.`,
    action: "Export both plates if the file can hold them.",
  }),
  "columns-disagree/sum": ({ total, newtons }) => ({
    message: `Column ${total} differs from the sum of the plates by up to ${newtons.toFixed(0)} N; the sum was used.`,
    action: "Check which columns belong together.",
  }),
  "columns-disagree/clocks-drift": ({ other, used, seconds }) => ({
    message: `The file has two clocks: column ${columnInWords(other)} and column ${columnInWords(used)} do not run alike: they move apart by ${milliseconds(seconds)}. Every row was read as one instant, that of the latter column.`,
    action: oneTimeBase,
  }),
  "columns-disagree/clocks-apart": ({ other, used, seconds }) => ({
    message: `The file has two clocks: column ${columnInWords(other)} and column ${columnInWords(used)} lie ${milliseconds(seconds)} apart. Every row was read as one instant, that of the latter column.`,
    action: oneTimeBase,
  }),
};

function unclear(message: string): Told {
  return { message, action: stateColumns };
}

function rowsInWords(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}

function milliseconds(seconds: number): string {
  return `${Number((1000 * seconds).toPrecision(3))} ms`;
}

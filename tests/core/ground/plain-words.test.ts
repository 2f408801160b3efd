import { expect, test } from "vitest";
import { withoutOptions } from "../../../core/ground/plain-words.ts";

test.each([
  ["State the sampling rate (--rate 1000).", "State the sampling rate."],
  [
    "Leave the stated rate out (--rate) if the time column is right.",
    "Leave the stated rate out if the time column is right.",
  ],
  [
    "State the plate of each foot in session.json or by --columns, or record a single-leg trial on the same plates.",
    "State the plate of each foot in session.json, or record a single-leg trial on the same plates.",
  ],
  ["Repeat the jump (both legs).", "Repeat the jump (both legs)."],
])("Screens leave the command line's options out of %s", (action, shown) => {
  expect(withoutOptions(action)).toBe(shown);
});

import type { Statements } from "../../ground/answer.ts";
import { capitalised } from "../../ground/plain-words.ts";
import { tests } from "./tests.ts";

type AnswerLabels = { readonly [Name in keyof Statements]: (value: Statements[Name]) => string };

const columnRoles = { time: "time", left: "left foot", right: "right foot", total: "both feet" } as const;

/** What a button says that states an answer. */
export const answers: AnswerLabels = {
  test: (value) => capitalised(tests.label(value)),
  limb: (value) => (value === "both" ? "Both legs" : `${value === "left" ? "Left" : "Right"} leg`),
  leadingLeg: (value) => `The ${value} leg stepped off first`,
  unit: (value) => `The unit is ${value}`,
  rateHz: (value) => `The rate is ${value} Hz`,
  massKg: (value) => `Body mass is ${value} kg`,
  dropHeightMetres: (value) => `The box is ${value * 100} cm high`,
  decimalMark: (value) => `Decimals start with a ${value}`,
  columns: (value) =>
    Object.entries(value)
      .map(([role, column]) => `${columnRoles[role as keyof typeof columnRoles]}: column ${column}`)
      .join(", "),
  swapPlates: () => "The feet stood the other way round",
  resample: () => "Put the samples on an even time base",
  resampleHz: (value) => `Put the samples on an even time base of ${value} Hz`,
  kept: () => "Keep it in means",
  leftOut: () => "Take the recording out",
};

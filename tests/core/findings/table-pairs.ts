import { goodText, lines } from "../recording/recording-text.ts";
import { codesOfText, type FindingPair, type FindingPairs } from "./pair.ts";

const rows = lines(50, (index) => `${(index / 1000).toFixed(3)},350.5,360.5`);
const twoPlates = "time (s),left (N),right (N)\n";

/** What reading a table finds, in small texts. */
export const tablePairs: FindingPairs = {
  "rate-low": atRate(499, 500),
  "rate-missing": textPair("700.5\n".repeat(50), "700.5\n".repeat(50), { unit: "N" }, { unit: "N", rateHz: 1000 }),
  "rate-contradicts": {
    has: () => codesOfText(goodText(), { rateHz: 500 }),
    near: () => codesOfText(goodText(), { rateHz: 1000 }),
  },
  // Every other step is longer than the median by 4 %, or by 0.4 %; 1 % is even.
  "time-uneven": timed(
    (index) => index + (index % 2) * 0.02,
    (index) => index + (index % 2) * 0.002,
  ),
  // One step of 1.7 samples, or of 1.3; 1.5 samples are a gap.
  gap: timed(
    (index) => index + (index > 100 ? 0.7 : 0),
    (index) => index + (index > 100 ? 0.3 : 0),
  ),
  "cells-unreadable": textPair(goodText().replace("305.00", "n/a"), goodText()),
  "columns-unclear": textPair(goodText().replace("0.020,305.00,410.00", "0.020,305.00"), goodText()),
  "decimal-mark-unclear": textPair(
    `time (s);left (N)\n${lines(50, (index) => `${index};1,${500 + index}`)}`,
    `time (s);left (N)\n${lines(50, (index) => `${index};1,${50 + index}`)}`,
    { rateHz: 1000 },
    { rateHz: 1000 },
  ),
  "decimal-marks-differ": textPair(
    `${twoPlates}${rows}`.replaceAll(",", ";").replaceAll("0.5;", "0,5;").replaceAll(/0\.5$/gm, "0,5"),
    `${twoPlates}${rows}`.replaceAll(",", ";"),
  ),
  "rows-contradict": textPair(`Samples: 49\n${twoPlates}${rows}`, `Samples: 50\n${twoPlates}${rows}`),
  // 1 % of the largest load, 701 N.
  "columns-disagree": textPair(withTotal(710), withTotal(705)),
  "plate-derived": textPair(`time (s),total (N),right (N)\n${rows}`, `${twoPlates}${rows}`),
  "encoding-guessed": {
    has: () => codesOfText(bytesOf(`time (s),Kraft f\u00fcr links (N),right (N)\n${rows}`)),
    near: () => codesOfText(new TextEncoder().encode(`time (s),Kraft f\u00fcr links (N),right (N)\n${rows}`)),
  },
  "lines-skipped": textPair(`${twoPlates}${rows}End of data\n`, `${twoPlates}${rows}`),
  "sign-turned": textPair(`${twoPlates}${rows.replaceAll(",3", ",-3")}`, `${twoPlates}${rows}`),
  "unit-not-stated": textPair(`time (s),left,right\n${rows}`, `${twoPlates}${rows}`),
  "unit-contradicts": textPair(`${twoPlates}${rows}`, `${twoPlates}${rows}`, { unit: "kN" }, { unit: "N" }),
  truncated: textPair(goodText().slice(0, -10), goodText()),
  "not-data": textPair("The athlete was ill today.\nNo jumps.\n", goodText()),
  empty: textPair(" \r\n\n", goodText()),
};

type Answers = Parameters<typeof codesOfText>[1];

function textPair(has: string, near: string, answers: Answers = {}, nearAnswers: Answers = {}): FindingPair {
  return { has: () => codesOfText(has, answers), near: () => codesOfText(near, nearAnswers) };
}

function atRate(low: number, enough: number): FindingPair {
  const text = "700.5\n".repeat(50);
  return textPair(text, text, { unit: "N", rateHz: low }, { unit: "N", rateHz: enough });
}

/** The same forces at other instants, given in milliseconds. */
function timed(has: (index: number) => number, near: (index: number) => number): FindingPair {
  const text = (milliseconds: (index: number) => number): string =>
    `time (ms),left (N),right (N)\n${lines(200, (index) => `${milliseconds(index).toFixed(4)},${300 + (index % 7)}.5,${400 + (index % 5)}.5`)}`;
  return textPair(text(has), text(near));
}

function withTotal(newtons: number): string {
  return `time (s),left (N),right (N),total (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},300.5,400.5,${index === 20 ? newtons : 701}.0`)}`;
}

/** Windows-1252: one byte a character below 256. */
function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}

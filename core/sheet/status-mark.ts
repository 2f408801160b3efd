import type { Status } from "../ground/status.ts";

/** Side of the square box the marks are drawn in, and the width of their strokes, in the same unit. */
export const statusMarkBox = 16;
export const statusMarkStroke = 1.5;

const box = "M4 2.5H12A1.5 1.5 0 0 1 13.5 4V12A1.5 1.5 0 0 1 12 13.5H4A1.5 1.5 0 0 1 2.5 12V4A1.5 1.5 0 0 1 4 2.5Z";

/**
 * The mark of each status as SVG path data in a box of 16 × 16, drawn as lines without filling. They differ in shape
 * alone, so that no colour is needed: ticked box, empty box, two waves, three dashes, slash, empty brackets, hourglass, gate.
 */
export const statusMarks: Readonly<Record<Status, string>> = {
  met: `${box}M5 8.3L7.2 10.6L11.2 5.4`,
  "not-met": box,
  "too-close-to-call": "M2 6C4 3.4 6 3.4 8 6S12 8.6 14 6M2 10.8C4 8.2 6 8.2 8 10.8S12 13.4 14 10.8",
  "not-measured": "M1.5 8H4.5M6.5 8H9.5M11.5 8H14.5",
  "not-applicable": "M4 13L12 3",
  "no-reference": "M6 2.5H3V13.5H6M10 2.5H13V13.5H10",
  "out-of-date": "M4 2.5H12L4 13.5H12Z",
  "withheld-today": "M3 2.5V13.5M13 2.5V13.5M3 6H13M3 10.5H13",
};

/** The mark as a small SVG picture. It is decoration: the word always stands beside it. */
export function statusMarkSvg(status: Status, colour: string, size: number): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 ${statusMarkBox} ${statusMarkBox}" aria-hidden="true"><path d="${statusMarks[status]}" fill="none" stroke="${colour}" stroke-width="${statusMarkStroke}" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
}

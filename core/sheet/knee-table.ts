import type { KneeRow } from "../criteria/knee-rows.ts";
import { asSentence } from "../ground/plain-words.ts";
import { english } from "../words/english.ts";
import type { SheetBlock } from "./document.ts";

/** The knee's own rows, which no gate withholds; nothing where nobody is injured. */
export function kneeTable(rows: readonly KneeRow[]): readonly SheetBlock[] {
  if (rows.length === 0) return [];
  return [
    {
      kind: "table",
      caption: "The knee itself",
      columns: [
        { text: "Asked for", align: "start", wide: true },
        { text: "Today", align: "start" },
        { text: "Why", align: "start", wide: true },
      ],
      rows: rows.map(({ label, threshold, status, reason }) => ({
        cells: [
          { text: label, muted: threshold, align: "start" },
          { text: english.statuses.label(status), align: "start", emphasis: "strong", status },
          { text: asSentence(reason), align: "start" },
        ],
      })),
    },
  ];
}

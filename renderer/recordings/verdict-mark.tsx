const marks = {
  counts: "M4 13l5 6L20 5",
  "does not": "M5 5l14 14M19 5L5 19",
  practice: "M5 7h14M5 12h14M5 17h14",
  asks: "M7 8a5 5 0 1 1 7 5c-1.500 .8-2 1.500-2 3M12 20.500v.1",
} as const;

/** A tick, a cross, three lines or a question mark, drawn, so that the verdict is told by shape and word and never by colour. */
export function VerdictMark({ mark }: { readonly mark: keyof typeof marks }) {
  return (
    <svg className="verdict-mark" viewBox="0 0 24 24" aria-hidden="true">
      <path
        d={marks[mark]}
        fill="none"
        stroke="currentcolor"
        strokeWidth="3"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}

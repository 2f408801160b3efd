/** One stretch of the ribbon in pixels, with its words. */
export interface RibbonPiece {
  readonly name: string;
  /** What a stretch too narrow for its name may show instead. */
  readonly number?: string;
  readonly duration: string;
  readonly left: number;
  readonly width: number;
}

/** A label under the ribbon for a stretch too narrow to hold its own. */
export interface RibbonLabel {
  readonly text: string;
  /** Pixel of the stretch's middle, where the tick stands. */
  readonly at: number;
  readonly left: number;
  /** Row under the ribbon, from 0. */
  readonly lane: number;
}

/** Width a letter takes on average at the ribbon's size; generous, so that nothing touches. */
const letterPixels = 6.4;

export function textPixels(text: string): number {
  return text.length * letterPixels;
}

/** True when the stretch holds its name and its duration, one above the other. */
export function holdsItsWords(piece: RibbonPiece): boolean {
  return piece.width >= Math.max(textPixels(piece.name), textPixels(piece.duration)) + 4;
}

/**
 * Places the words that found no room in their stretch: each starts at its own tick, later stretches in upper rows, so
 * that no tick crosses a word.
 */
export function placeLabels(pieces: readonly RibbonPiece[], from: number, to: number): readonly RibbonLabel[] {
  /** Where the leftmost label of each row starts. */
  const starts: number[] = [];
  return pieces
    .filter((piece) => !holdsItsWords(piece))
    .toReversed()
    .map((piece) => {
      const text = `${piece.name} ${piece.duration}`;
      const at = piece.left + piece.width / 2;
      const width = textPixels(text);
      const left = Math.max(from, Math.min(at, to - width));
      const free = starts.findIndex((start) => left + width + 8 <= start);
      const lane = free === -1 ? starts.length : free;
      starts[lane] = left;
      return { text, at, left, lane };
    })
    .toReversed();
}

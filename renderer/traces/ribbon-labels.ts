/** One stretch of the ribbon in pixels, with its words. */
export interface RibbonPiece {
  readonly name: string;
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

/** Places the words that found no room in their stretch: centred below it, in the first row where nothing is touched. */
export function placeLabels(pieces: readonly RibbonPiece[], from: number, to: number): readonly RibbonLabel[] {
  const ends: number[] = [];
  return pieces
    .filter((piece) => !holdsItsWords(piece))
    .map((piece) => {
      const text = `${piece.name} ${piece.duration}`;
      const width = textPixels(text);
      const at = piece.left + piece.width / 2;
      const left = Math.min(Math.max(at - width / 2, from), to - width);
      const free = ends.findIndex((end) => end + 8 <= left);
      const lane = free === -1 ? ends.length : free;
      ends[lane] = left + width;
      return { text, at, left, lane };
    });
}

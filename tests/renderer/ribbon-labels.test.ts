import { describe, expect, it } from "vitest";
import { holdsItsWords, placeLabels, type RibbonPiece, textPixels } from "../../renderer/traces/ribbon-labels.ts";

const piece = (name: string, left: number, width: number): RibbonPiece => ({ name, duration: "120 ms", left, width });

describe("words of the phase ribbon", () => {
  it("stand inside their stretch where there is room, and only there", () => {
    expect(holdsItsWords(piece("braking", 0, 60))).toBe(true);
    expect(holdsItsWords(piece("braking", 0, 20))).toBe(false);
  });

  it("never touch each other below the ribbon, and no tick crosses a word", () => {
    const pieces = [piece("unweighting", 100, 20), piece("braking", 120, 12), piece("propulsion", 132, 18)];
    const labels = placeLabels(pieces, 50, 600);
    for (const [at, label] of labels.entries()) {
      for (const other of labels.slice(at + 1)) {
        // the later phase stands in an upper row and begins to the right of the earlier one's tick
        expect(other.lane).toBeLessThan(label.lane);
        expect(other.left).toBeGreaterThan(label.at);
      }
    }
  });

  it("stay inside the chart", () => {
    const [label] = placeLabels([piece("landing", 590, 10)], 50, 600);
    expect(label!.left + textPixels(label!.text)).toBeLessThanOrEqual(600);
  });
});

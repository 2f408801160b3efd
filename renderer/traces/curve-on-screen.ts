import { words } from "../words/words.ts";

const prose = words.screens.traces;

/** From this height of its curve on, in CSS pixels, a trial that was drawn counts as seen. */
export const leastCurvePixels = 200;

/** How high the force curve of a drawn trial is, and how much of that is inside the window, in CSS pixels. */
export interface CurveOnScreen {
  readonly heightPixels: number;
  readonly visiblePixels: number;
}

/**
 * Measures what the chart library has drawn: from the foot of the force axis to the top of the highest curve on it. Zero
 * where there is no curve, or where nobody can see the page.
 */
export function curveOnScreen(plot: HTMLElement): CurveOnScreen {
  const lines = [...plot.querySelectorAll<SVGPathElement>(".subplot.xy .scatterlayer path.js-line")];
  const room = plot.querySelector(".draglayer .xy .nsewdrag")?.getBoundingClientRect();
  const tops = lines.filter((each) => each.getAttribute("d")).map((each) => each.getBoundingClientRect().top);
  if (room === undefined || tops.length === 0 || document.visibilityState !== "visible") {
    return { heightPixels: 0, visiblePixels: 0 };
  }
  const top = Math.max(room.top, Math.min(...tops));
  const opening = openingAround(plot);
  const visible = Math.min(room.bottom, opening.bottom) - Math.max(top, opening.top);
  return { heightPixels: Math.max(0, room.bottom - top), visiblePixels: Math.max(0, visible) };
}

/** The part of the window through which an element can be seen: panels that scroll show less of it. */
function openingAround(element: HTMLElement): { readonly top: number; readonly bottom: number } {
  let [top, bottom] = [0, window.innerHeight];
  for (let each = element.parentElement; each !== null && each !== document.body; each = each.parentElement) {
    if (getComputedStyle(each).overflowY === "visible") continue;
    const place = each.getBoundingClientRect();
    [top, bottom] = [Math.max(top, place.top), Math.min(bottom, place.bottom)];
  }
  return { top, bottom };
}

/**
 * Why a trial is not marked as seen, and what to do about it.
 * @param curve undefined: it has not been drawn
 * @param mayCome false where its file may hold nothing that can be drawn
 */
export function notSeenWords(curve: CurveOnScreen | undefined, mayCome: boolean): string {
  if (curve === undefined) {
    return mayCome ? prose.trialNotDrawn : prose.noCurve;
  }
  const [height, visible] = [Math.round(curve.heightPixels), Math.round(curve.visiblePixels)];
  const least = prose.seenFrom(leastCurvePixels);
  return curve.heightPixels < leastCurvePixels
    ? prose.curveTooLow(height, least)
    : prose.curveCutOff(visible, height, least);
}

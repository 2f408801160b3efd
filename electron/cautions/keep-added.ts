import type { SessionDescription } from "../../core/stated/session.ts";
import { together } from "./together.ts";

/**
 * A description that is to take the place of another, with every answer, reading and opening that either has: those are
 * only ever added to, whatever is undone, redone or read again.
 */
export function keepAdded(before: SessionDescription, after: SessionDescription): SessionDescription {
  const answers = together(before.cautions?.answers, after.cautions?.answers);
  const readings = together(before.readings, after.readings);
  const gateOpenings = together(before.gateOpenings, after.gateOpenings);
  return {
    ...after,
    ...(answers.length > 0 && { cautions: { ...after.cautions, answers } }),
    ...(readings.length > 0 && { readings }),
    ...(gateOpenings.length > 0 && { gateOpenings }),
  };
}

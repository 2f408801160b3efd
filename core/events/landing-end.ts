import { placeWanted, type TrialEdits } from "./edit-events.ts";
import { type Kinematics, lastSample, velocityAt } from "./kinematics.ts";
import { velocityCrossing } from "./turning-points.ts";

/** The end of a landing, where velocity rises through zero after touchdown, or where a person has put it. */
export function placeLandingEnd(motion: Kinematics, touchdown: number, edits: TrialEdits): number | undefined {
  return placeWanted(edits, "landingEnd", touchdown, lastSample(motion)) ?? landingEndAfter(motion, touchdown);
}

/** First rise of velocity through zero after touchdown. */
function landingEndAfter(motion: Kinematics, touchdown: number): number | undefined {
  const last = Math.floor(lastSample(motion));
  for (let index = Math.ceil(touchdown); index < last; index += 1) {
    if (velocityAt(motion, index) < 0 && velocityAt(motion, index + 1) >= 0) return velocityCrossing(motion, index, 0);
  }
  return undefined;
}

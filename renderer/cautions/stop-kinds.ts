import type { stopKinds } from "../../core/stated/gate-words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

/** What a stop can be about, as it is chosen and shown. */
export const stopKindLabels: Readonly<Record<(typeof stopKinds)[number], string>> = {
  knee: prose.theKnee,
  athlete: prose.theAthlete,
  time: prose.time,
  equipment: prose.theEquipment,
};

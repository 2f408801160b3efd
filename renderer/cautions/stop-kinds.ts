import type { stopKinds } from "../../core/stated/gate-words.ts";

/** What a stop can be about, as it is chosen and shown. */
export const stopKindLabels: Readonly<Record<(typeof stopKinds)[number], string>> = {
  knee: "the knee",
  athlete: "the athlete",
  time: "time",
  equipment: "the equipment",
};

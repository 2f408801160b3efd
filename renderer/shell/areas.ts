import { words } from "../words/words.ts";

const prose = words.screens.frame;

/** The areas of the application that work today, in the order of the work. */
export const areas = ["athletes", "recordings", "traces", "sides", "sheet"] as const;

export type Area = (typeof areas)[number];

const labels: Readonly<Record<Area, string>> = {
  athletes: prose.athletes,
  recordings: prose.recordings,
  traces: prose.traces,
  sides: prose.sides,
  sheet: prose.sheet,
};

export function areaLabel(area: Area): string {
  return labels[area];
}

const storageKey = "counterpoise-area";

/** The area shown before the page was reloaded. */
export function rememberedArea(): Area | undefined {
  const stored = sessionStorage.getItem(storageKey);
  return areas.find((area) => area === stored);
}

export function rememberArea(area: Area): void {
  sessionStorage.setItem(storageKey, area);
}

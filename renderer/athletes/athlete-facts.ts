import type { AthletePage } from "../../electron/register/register-views.ts";
import { dateWords } from "../shell/words.ts";
import { sinceWords } from "./dates.ts";

/** Who an athlete is, on one line. */
export function athleteFacts({ athlete, injuries, operations }: AthletePage, today: string): string {
  const { sex, birthYear, birthDate, heightMetres, sport, level, dominantSide } = athlete.content;
  const year = birthYear ?? (birthDate === undefined ? undefined : Number(birthDate.slice(0, 4)));
  const sides = new Set([...injuries, ...operations].map(({ content }) => content.side));
  const [side] = sides;
  const operated = operations
    .map(({ content }) => content.date)
    .toSorted()
    .at(-1);
  return [
    sex,
    year === undefined ? "" : `born ${year}`,
    heightMetres === undefined ? "" : `${Math.round(heightMetres * 100)} cm`,
    sport,
    level,
    dominantSide === undefined ? "" : `${dominantSide} side dominant`,
    side === undefined ? "" : sides.size === 2 ? "both knees involved" : `${side} side involved`,
    operated === undefined ? "" : `operated ${dateWords(operated)}, ${sinceWords(operated, today)}`,
  ]
    .filter((part) => part !== undefined && part !== "")
    .join(" · ");
}

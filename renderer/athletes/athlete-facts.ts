import type { InvolvedSide } from "../../core/ground/limb.ts";
import { involvedSideAt, isInvolved, type RecordedInjury } from "../../core/sides/involvement.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { sinceWords } from "../shell/dates.ts";
import { dateWords, involvedWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.athleteRecord;

/** Who an athlete is, on one line. */
export function athleteFacts({ athlete, injuries, operations }: AthletePage, today: string): string {
  const { sex, birthYear, birthDate, heightMetres, sport, level, dominantSide } = athlete.content;
  const year = birthYear ?? (birthDate === undefined ? undefined : Number(birthDate.slice(0, 4)));
  const recorded = [...injuries, ...operations].map(({ content }) => content);
  const involved = involvedSideAt(recorded, today, athlete.content.nobodyInjured !== undefined);
  const operated = operations
    .map(({ content }) => content.date)
    .toSorted()
    .at(-1);
  return [
    sex,
    year === undefined ? "" : prose.born(year),
    heightMetres === undefined ? "" : prose.height(Math.round(heightMetres * 100)),
    sport,
    level,
    dominantSide === undefined ? "" : prose.sideDominant(dominantSide),
    involvedNow(involved, recorded),
    operated === undefined ? "" : prose.operated(dateWords(operated), sinceWords(operated, today)),
  ]
    .filter((part) => part !== undefined && part !== "")
    .join(" · ");
}

/** "Nobody injured" only where somebody stated it: records that have not begun, or are over, say less. */
function involvedNow(involved: InvolvedSide | undefined, recorded: readonly RecordedInjury[]): string {
  if (involved === "none") return recorded.some(isInvolved) ? prose.noSideInvolved : prose.nobodyInjured;
  return involved === undefined ? "" : involvedWords(involved);
}

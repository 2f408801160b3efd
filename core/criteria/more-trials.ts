import type { Settings } from "../settings.ts";

const words = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/**
 * Whether more trials today could settle an undecided status. They are never asked for lightly: only as many as the
 * settings allow to suggest, within the most attempts a side, and only if they would probably settle it.
 *
 * @param attempts trials made already, excluded ones too, on the side that has most of them
 * @param what who would have to jump: "a side", "on two legs", "of the left leg"
 * @param settles whether that many more trials of the present spread would decide the status
 */
export function moreTrialsSentence(
  attempts: number,
  what: string,
  settles: (extraTrials: number) => boolean,
  settings: Settings,
): string {
  const most = Math.min(settings.suggestedTrialsPerSide, settings.maximumTrialsPerSide - attempts);
  for (let extra = 1; extra <= most; extra += 1) {
    if (!settles(extra)) continue;
    const count = words[extra] ?? String(extra);
    const capital = count.charAt(0).toUpperCase() + count.slice(1);
    return `${capital} more ${extra === 1 ? "trial" : "trials"} ${what} would probably settle this.`;
  }
  return "More trials today cannot settle this.";
}

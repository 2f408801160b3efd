/** Names a trial within its session. */

export function trialKey(file: string, trial: number): string {
  return `${file} ${trial}`;
}

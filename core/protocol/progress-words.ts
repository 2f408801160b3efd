import type { Gate } from "../criteria/gate.ts";
import { capitalised } from "../plain-words.ts";
import { boxHeightText } from "../sides/box-height.ts";
import { testLabel } from "../test-kind.ts";
import type { ProtocolTest } from "./protocol.ts";
import type { LimbProgress, ProtocolProgress, TestProgress } from "./protocol-progress.ts";

const countWords = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** "single-leg drop jump from 0.20 m". */
export function protocolTestName({
  test,
  legs,
  dropHeightMetres,
}: Pick<ProtocolTest, "test" | "legs" | "dropHeightMetres">): string {
  const name = legs === "single" ? `single-leg ${testLabel(test)}` : testLabel(test);
  return dropHeightMetres === undefined ? name : `${name} from ${boxHeightText(dropHeightMetres)}`;
}

/** "Single-leg drop jump from 0.20 m: right 2 of 4, left 3 of 4." */
export function progressLine({ entry, limbs }: TestProgress): string {
  const counts = limbs.map(({ limb, valid, wanted }) =>
    limb === "both" ? `${valid} of ${wanted}` : `${limb} ${valid} of ${wanted}`,
  );
  return `${capitalised(protocolTestName(entry))}: ${counts.join(", ")}.`;
}

/**
 * What is still missing in the session, one sentence a test and leg ("Two more valid single-leg drop jumps from 0.20 m
 * on the left."). With the gate closed nothing more is asked for.
 */
export function missingLines(progress: ProtocolProgress, gate: Gate): readonly string[] {
  if (!gate.open) return [noMoreToday(gate)];
  return progress.tests.flatMap(({ entry, limbs }) =>
    limbs.flatMap((limb) => {
      if (limb.state === "complete") return [];
      return limb.state === "repeat" ? [wantedLine(entry, limb)] : [usedUpLine(entry, limb)];
    }),
  );
}

/** Said instead of asking for more while the gate is closed. */
export function noMoreToday({ reason }: Gate): string {
  return `No more jumps today. ${reason}`;
}

function wantedLine(entry: ProtocolTest, { limb, more, valid }: LimbProgress): string {
  const count = countWords[more] ?? String(more);
  const again = valid === 0 ? "" : " more";
  return `${capitalised(count)}${again} valid ${plural(protocolTestName(entry), more)}${onLimb({ limb })}.`;
}

function usedUpLine(entry: ProtocolTest, { limb, valid, wanted, attempts }: LimbProgress): string {
  return `${capitalised(protocolTestName(entry))}${onLimb({ limb })}: ${valid} of ${wanted}, and all ${attempts} attempts are made. No more today.`;
}

/** What was recorded although the protocol says that it is not done at this stage. */
export function tooEarlyLines({ tooEarly }: ProtocolProgress): readonly string[] {
  return tooEarly.map(
    ({ exclusion, trials }) =>
      `${capitalised(protocolTestName(exclusion))} is not done at this stage (${exclusion.reason}), and ${trials} ${trials === 1 ? "was" : "were"} recorded.`,
  );
}

/** " on the left"; nothing for both legs. */
export function onLimb({ limb }: Pick<LimbProgress, "limb">): string {
  return limb === "both" ? "" : ` on the ${limb}`;
}

/** "single-leg drop jumps from 0.20 m", "bouts of repeated hops". */
function plural(name: string, count: number): string {
  if (name.includes("hops")) return `${count === 1 ? "bout" : "bouts"} of ${name}`;
  return count === 1 ? name : name.replace(/(jump|landing)/, "$1s");
}

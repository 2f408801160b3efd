import { closedFor, type Gate } from "../gate/gate.ts";
import type { InvolvedSide } from "../ground/limb.ts";
import { capitalised, countOf } from "../ground/plain-words.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { boxHeightText } from "../sides/box-height.ts";
import { legsInOrder } from "../stated/protocol.ts";
import type { Protocol, ProtocolTest } from "../stated/protocol-schema.ts";
import { english } from "../words/english.ts";
import { landingsOf } from "./landings.ts";
import type { LimbProgress, ProtocolProgress, TestProgress } from "./protocol-progress.ts";

const countWords = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** "single-leg drop jump from 0.20 m". */
export function protocolTestName({
  test,
  legs,
  dropHeightMetres,
}: Pick<ProtocolTest, "test" | "legs" | "dropHeightMetres">): string {
  const name = legs === "single" ? `single-leg ${english.tests.label(test)}` : english.tests.label(test);
  return dropHeightMetres === undefined ? name : `${name} from ${boxHeightText(dropHeightMetres)}`;
}

/** "Single-leg drop jump from 0.20 m: right 2 of 4 (1 waits for an answer), left 3 of 4 (1 practice jump)." */
export function progressLine({ entry, limbs }: TestProgress): string {
  const name = capitalised(protocolTestName(entry));
  if (limbs.length === 0) return `${name}: which leg is uninvolved is not stated.`;
  const counts = limbs.map(({ limb, valid, wanted, waiting, practice }) => {
    const beside = [
      ...(waiting === 0 ? [] : [`${waiting} ${waiting === 1 ? "waits for an answer" : "wait for an answer"}`]),
      ...(practice === 0 ? [] : [countOf(practice, "practice jump")]),
    ];
    const so = `${valid} of ${wanted}${beside.length === 0 ? "" : ` (${beside.join(", ")})`}`;
    return limb === "both" ? so : `${limb} ${so}`;
  });
  return `${name}: ${counts.join(", ")}.`;
}

/** "Landings of this session: two-leg 12 of 30, right leg 6 of 26, left leg 4 of 26."; empty where no limit is set. */
export function landingsLine(
  protocol: Protocol,
  trials: readonly TrialResult[],
  involved: InvolvedSide | undefined,
): string {
  const { landingsADay } = protocol;
  if (landingsADay === undefined) return "";
  const made = landingsOf(trials);
  const { twoLeg, perLeg } = landingsADay;
  const legs = legsInOrder(involved).map((leg) => `${leg} leg ${made[leg]} of ${perLeg}`);
  const uncounted = made.uncounted === 0 ? "" : ` Those of ${countOf(made.uncounted, "recording")} cannot be counted.`;
  return `Landings of this session: two-leg ${made.twoLeg} of ${twoLeg}, ${legs.join(", ")}.${uncounted}`;
}

/**
 * What is still missing in the session, one sentence a test and leg ("Two more valid single-leg drop jumps from 0.20 m
 * on the left."). Of tests that are closed nothing more is asked for.
 */
export function missingLines(progress: ProtocolProgress, gate: Gate): readonly string[] {
  if (!gate.open) return [noMoreToday(gate)];
  const closed = progress.tests.flatMap(({ entry }) => closedFor(gate, entry)).filter((each) => each !== "");
  const lines = progress.tests.flatMap(({ entry, limbs, obstacle }) => [
    ...limbs.filter(({ limb }) => closedFor(gate, entry, [limb]) === "").flatMap((limb) => limbLines(entry, limb)),
    ...(obstacle === "" ? [] : [`${capitalised(protocolTestName(entry))}: ${obstacle}`]),
  ]);
  return [...lines, ...new Set(closed)];
}

function limbLines(entry: ProtocolTest, limb: LimbProgress): readonly string[] {
  const waits = limb.waiting === 0 || limb.state === "complete" ? [] : [waitsLine(entry, limb)];
  switch (limb.state) {
    case "complete":
    case "waits":
      return waits;
    case "repeat":
      return [...waits, wantedLine(entry, limb)];
    case "no-more":
      return [...waits, usedUpLine(entry, limb)];
  }
}

/** Said instead of asking for more while every test is closed; what only waits for answers is no end of the day. */
export function noMoreToday({ closures, reason }: Pick<Gate, "closures" | "reason">): string {
  const waits = closures.every(({ code }) => code === "cautions-not-asked");
  return waits ? `Before more jumps: ${reason}` : `No more jumps today. ${reason}`;
}

function wantedLine(entry: ProtocolTest, limb: LimbProgress): string {
  const { more, valid, waiting } = limb;
  const count = countWords[more] ?? String(more);
  const again = valid + waiting === 0 ? "" : " more";
  return `${capitalised(count)}${again} valid ${plural(protocolTestName(entry), more)}${onLimb(limb)}${leadsWords(limb)}.`;
}

/** ", with the right leg leading"; ", two with the left leg leading and one with the right"; empty where it is free. */
function leadsWords({ leadsWanted, more, waiting }: LimbProgress): string {
  if (leadsWanted === undefined || waiting > 0) return "";
  const { left, right } = leadsWanted;
  if (left > 0 && right > 0) {
    const word = (count: number) => countWords[count] ?? String(count);
    return `, ${word(left)} with the left leg leading and ${word(right)} with the right`;
  }
  const side = left > 0 ? "left" : "right";
  const short = Math.max(left, right);
  if (short === 0) return "";
  return short >= more ? `, with the ${side} leg leading` : `, ${countWords[short]} with the ${side} leg leading`;
}

function waitsLine(entry: ProtocolTest, { limb, waiting }: LimbProgress): string {
  const one = waiting === 1;
  return `${capitalised(protocolTestName(entry))}${onLimb({ limb })}: ${waiting} ${one ? "counts" : "count"} once what ${one ? "it waits" : "they wait"} for is answered.`;
}

function usedUpLine(entry: ProtocolTest, { limb, valid, wanted, attempts, mostAttempts }: LimbProgress): string {
  const why = attempts >= mostAttempts ? `all ${attempts} attempts are made` : "the landings of a day are made";
  return `${capitalised(protocolTestName(entry))}${onLimb({ limb })}: ${valid} of ${wanted}, and ${why}. No more today.`;
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
export function plural(name: string, count: number): string {
  if (name.includes("hops")) return `${count === 1 ? "bout" : "bouts"} of ${name}`;
  return count === 1 ? name : name.replace(/(jump|landing)/, "$1s");
}

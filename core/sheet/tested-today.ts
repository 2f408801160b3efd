import type { Bearer } from "../ground/limb.ts";
import { capitalised, countOf, listInWords } from "../ground/plain-words.ts";
import { testKinds } from "../ground/test-kind.ts";
import { addedTestLines } from "../protocol/added-tests.ts";
import { sessionProgress } from "../protocol/session-progress.ts";
import type { PlateProof } from "../recording/recording.ts";
import { countsInMeans, isHeld } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";
import { trialBearer } from "../result/trial-bearer.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { english } from "../words/english.ts";
import { groupDetail, groupName, type TrialGroup, trialGroups } from "./sheet-trials.ts";

/**
 * What was tested, one line a test; how the sides of the plates are known; what could not be analysed; what was tested
 * before the protocol has it.
 */
export function testedToday(session: SessionResult): readonly string[] {
  const { trials } = session;
  if (trials.length === 0) return ["No recording was found."];
  const unknown = trials.filter((trial) => trial.test === undefined || trial.limb === undefined).length;
  return [
    ...testKinds.flatMap((test) => testInWords(trialGroups(trials).filter((group) => group.test === test))),
    ...(unknown === 0 ? [] : [`${countOf(unknown, "recording")} could not be analysed; the following pages say why.`]),
    ...platesInWords(session),
    ...(session.description.protocol === undefined ? [] : addedTestLines(session.description.protocol)),
    ...(sessionProgress(session)?.tooEarly ?? []),
  ];
}

/** One line a test: the test is named once, before its first group. */
function testInWords(groups: readonly TrialGroup[]): readonly string[] {
  if (groups.length === 0) return [];
  return [groups.map((group, at) => groupInWords(group, at === 0 ? groupName(group) : groupDetail(group))).join(" ")];
}

function groupInWords(group: TrialGroup, name: string): string {
  const parts = bearersOf(group).map((bearer) => {
    const of = bearer.side === "both" ? "" : `${english.limbs.bearer(bearer)} `;
    const own = group.trials.filter((trial) => {
      const { side, plate } = trialBearer(trial) ?? {};
      return side === bearer.side && plate === bearer.plate;
    });
    return `${of}${countsInWords(own)}`;
  });
  return `${capitalised(name)}: ${parts.join("; ")}.`;
}

/** Both legs together, or left and right (also where one has no trial), and plates whose leg nobody knows. */
function bearersOf({ legs, trials }: TrialGroup): readonly Bearer[] {
  if (legs === "both") return [{ side: "both" }];
  const plates = [...new Set(trials.flatMap((trial) => trialBearer(trial)?.plate ?? []))].toSorted((a, b) => a - b);
  const sided = plates.length === 0 || trials.some((trial) => trialBearer(trial)?.side !== undefined);
  return [
    ...(sided ? (["left", "right"] as const).map((side) => ({ side })) : []),
    ...plates.map((plate) => ({ plate })),
  ];
}

function countsInWords(trials: readonly TrialResult[]): string {
  const used = trials.filter(countsInMeans).length;
  const attempts = trials.filter((trial) => trial.practice !== true);
  const practice = trials.length - attempts.length;
  const excluded = attempts.filter((trial) => trial.status !== "refused" && trial.excluded !== undefined).length;
  const held = attempts.filter((trial) => isHeld(trial) && trial.excluded === undefined).length;
  const refused = attempts.filter((trial) => trial.status === "refused").length;
  return listInWords([
    `${countOf(used, "trial")} used`,
    ...(practice === 0 ? [] : [`${countOf(practice, "practice jump")} not counted`]),
    ...(excluded === 0 ? [] : [`${excluded} excluded`]),
    ...(held === 0 ? [] : [`${held} held because the weight differs`]),
    ...(refused === 0 ? [] : [`${refused} not analysed`]),
  ]);
}

const proofWords: Readonly<Record<PlateProof, string>> = {
  "single-leg-trial": "is proved by single-leg trials of the session.",
  "one-leg-standing": "is proved by standing on one leg in the session.",
  layout: "is taken from the saved layout of the plates.",
  stated: "was stated by the tester.",
  unproved: "is not proved, so two-leg jumps are told by plate and have no index.",
};

/** How it is known which foot stood on which plate; nothing where no two-leg trial stood on two plates. */
function platesInWords(session: SessionResult): readonly string[] {
  const onTwoPlates = session.trials.filter(
    (trial) => countsInMeans(trial) && trial.limb === "both" && trial.plates.some((plate) => plate.limb !== "both"),
  );
  if (onTwoPlates.length === 0) return [];
  if (onTwoPlates.some((trial) => trial.feet === "contradicted")) {
    return [
      "Single-leg trials contradict which foot stood on which plate, so they are told by plate and have no index.",
    ];
  }
  const proofs = onTwoPlates.flatMap((trial) => trial.plates.map((plate) => plate.proof));
  const order: readonly PlateProof[] = ["unproved", "stated", "layout", "one-leg-standing", "single-leg-trial"];
  const weakest = order.find((proof) => proofs.includes(proof)) ?? "unproved";
  return [`Which foot stood on which plate ${proofWords[weakest]}`];
}

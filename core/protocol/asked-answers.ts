import type { Side } from "../ground/limb.ts";
import { capitalised, countOf, listInWords, sentences } from "../ground/plain-words.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { boxHeights, boxHeightText, sameBoxHeight } from "../sides/box-height.ts";
import { contradictionAction } from "../sides/plate-proof.ts";
import type { FileEntry } from "../stated/file-entry.ts";
import type { StatedPlate } from "../stated/stated-plate.ts";
import { countsFor, type NeededAnswer } from "./counting.ts";
import { leadOffers } from "./lead-offers.ts";
import { plural, protocolTestName } from "./progress-words.ts";
import { inRecordedOrder } from "./recorded-order.ts";

/** What is stated of one trial, or of a file that has only one; as an entry of `session.json`. */
export type AnsweredRow = Pick<FileEntry, "file" | "trial" | "dropHeightMetres" | "leadingLeg">;

/** An answer that is likely, to be taken with one click; never taken by itself. */
export interface LikelyAnswer {
  /** "0.30 m for these 4". */
  readonly words: string;
  /** Why it is likely: "as the protocol has it". */
  readonly because: string;
  /** What it states. */
  readonly states:
    | { readonly kind: "trials"; readonly rows: readonly AnsweredRow[] }
    | { readonly kind: "feet"; readonly files: readonly string[]; readonly feet: readonly StatedPlate[] };
}

/** A question whose answer lets trials count that were made already. */
export interface AskedAnswer {
  readonly about: NeededAnswer;
  /** A whole sentence. */
  readonly question: string;
  /** The rows it asks about, without an answer, in the order of recording. */
  readonly rows: readonly AnsweredRow[];
  /** The likeliest first. */
  readonly likely: readonly LikelyAnswer[];
}

/**
 * What is asked of a person so that trials of the session count: the height of the box, the leading leg, which foot stood
 * on which plate; one question for the trials that share it, in the order of the session's tests.
 */
export function askedAnswers(session: SessionResult): readonly AskedAnswer[] {
  const trials = inRecordedOrder(session.trials);
  const waiting = trials.flatMap((trial) => {
    const { waitsFor } = countsFor(trial, trials);
    return waitsFor.length === 0 ? [] : [{ trial, waitsFor }];
  });
  const waitFor = (about: NeededAnswer) =>
    waiting.filter((each) => each.waitsFor.includes(about)).map((each) => each.trial);
  return [
    ...alike(waitFor("box height")).map((group) => boxQuestion(group, session)),
    ...alike(waitFor("leading leg"), "box").map((group) => leadQuestion(group, trials, session)),
    ...footQuestions(waitFor("feet"), session),
  ];
}

/** Trials of one test and number of legs together; where asked, of one box too. */
function alike(trials: readonly TrialResult[], by: "box" | "test" = "test"): readonly (readonly TrialResult[])[] {
  const groups: TrialResult[][] = [];
  for (const trial of trials) {
    const known = groups.find(([first]) => first !== undefined && isAlike(first, trial, by));
    if (known === undefined) groups.push([trial]);
    else known.push(trial);
  }
  return groups;
}

function isAlike(one: TrialResult, other: TrialResult, by: "box" | "test"): boolean {
  return (
    one.test === other.test &&
    (one.limb === "both") === (other.limb === "both") &&
    (by === "test" || sameBoxHeight(one.dropHeightMetres, other.dropHeightMetres))
  );
}

function boxQuestion(group: readonly TrialResult[], session: SessionResult): AskedAnswer {
  const [first] = group;
  const legs = first?.limb === "both" ? "both" : "single";
  const planned = (session.description.protocol?.tests ?? []).flatMap((entry) =>
    entry.test === first?.test && entry.legs === legs ? (entry.dropHeightMetres ?? []) : [],
  );
  const like = session.trials.filter((trial) => first !== undefined && isAlike(trial, first, "test"));
  const stated = boxHeights(like).flatMap((height) => height ?? []);
  const boxes = planned.length > 0 ? planned : stated;
  const because = planned.length > 0 ? "as the protocol has it" : "as in the others";
  const rows = group.map((trial) => rowOf(trial, session));
  return {
    about: "box height",
    question: `The height of the box is not stated for ${named(group)}: until it is, ${notCounted(group)}.`,
    rows,
    likely: boxes.map((dropHeightMetres) => ({
      words: `${boxHeightText(dropHeightMetres)} for ${these(group)}`,
      because,
      states: { kind: "trials", rows: rows.map((row) => ({ ...row, dropHeightMetres })) },
    })),
  };
}

function leadQuestion(
  group: readonly TrialResult[],
  trials: readonly TrialResult[],
  session: SessionResult,
): AskedAnswer {
  const [first] = group;
  const { protocol, involved } = session.description;
  // Trials that do not count were steps off the box too, but whether the legs took turns over them nobody knows.
  const series = trials.filter((trial) => first !== undefined && isAlike(trial, first, "box") && countsInMeans(trial));
  const perLeg = protocol?.tests.find((entry) => entry.test === first?.test && entry.legs === "both")?.perLeadingLeg;
  const offers = leadOffers(
    series.map((trial) => trial.leadingLeg),
    perLeg,
    involved,
  );
  return {
    about: "leading leg",
    question: sentences(
      `Which leg led off the box is not stated for ${named(group)}: until it is, ${notCounted(group)}.`,
      group.length === 1 ? "" : "The answers are in the order of the files' names.",
    ),
    rows: group.map((trial) => rowOf(trial, session)),
    likely: offers.map(({ leads, because }) => {
      const answered = group.map((trial) => ({ trial, leadingLeg: leads[series.indexOf(trial)] ?? "left" }));
      return {
        words: `${leadWords(answered.map(({ leadingLeg }) => leadingLeg))} for ${these(group)}`,
        because,
        states: {
          kind: "trials",
          rows: answered.map(({ trial, leadingLeg }) => ({ ...rowOf(trial, session), leadingLeg })),
        },
      };
    }),
  };
}

/** "left, right, left, right"; "right" where all are alike. */
function leadWords(leads: readonly Side[]): string {
  const [first = "left"] = leads;
  return capitalised(leads.every((lead) => lead === first) ? first : leads.join(", "));
}

/** One question for each way the plates are called and taken; none likely where single-leg trials contradict it. */
function footQuestions(trials: readonly TrialResult[], session: SessionResult): readonly AskedAnswer[] {
  const layouts = new Map<string, TrialResult[]>();
  for (const trial of trials) {
    const layout = JSON.stringify(trial.plates.map(({ name, limb }) => [name, limb]));
    layouts.set(layout, [...(layouts.get(layout) ?? []), trial]);
  }
  return [...layouts.values()].map((group): AskedAnswer => {
    const plates = group[0]?.plates ?? [];
    const isContradicted = group.some(({ feet }) => feet === "contradicted");
    const files = [...new Set(group.map((trial) => trial.file))];
    const offer = (turned: boolean, because: string): LikelyAnswer => {
      const feet = plates.flatMap(({ name, limb }): StatedPlate[] =>
        limb === "both" ? [] : [{ column: name, foot: turned === (limb === "left") ? "right" : "left" }],
      );
      const words = listInWords(feet.map(({ column, foot }) => `${foot} foot on plate ${column}`));
      return { words: `${capitalised(words)} for ${these(group)}`, because, states: { kind: "feet", files, feet } };
    };
    return {
      about: "feet",
      question: `${isContradicted ? "It is contradicted which foot stood on which plate" : "Which foot stood on which plate is not proved"} in ${named(group)}: until that is settled, ${notCounted(group)}. ${isContradicted ? contradictionAction : "A single-leg trial on the same plates, or two seconds of standing on one leg, proves it too."}`,
      rows: group.map((trial) => rowOf(trial, session)),
      likely: isContradicted
        ? []
        : [offer(false, "as the columns are called, if you saw it so"), offer(true, "the other way round")],
    };
  });
}

function rowOf({ file, trial }: TrialResult, { trials }: SessionResult): AnsweredRow {
  const isOneOfSeveral = trials.filter((each) => each.file === file).length > 1;
  return { file, ...(isOneOfSeveral ? { trial } : {}) };
}

/** "4 drop jumps from 0.30 m", "the single-leg drop jump jump-3.csv". */
function named(group: readonly TrialResult[]): string {
  const [first] = group;
  if (first?.test === undefined) return countOf(group.length, "recording");
  const { test, limb, dropHeightMetres } = first;
  const isOneTest = group.every((each) => isAlike(each, first, "box"));
  if (!isOneTest && group.some((each) => each.test !== test)) return `${group.length} two-leg jumps`;
  const name = protocolTestName({
    test,
    legs: limb === "both" ? "both" : "single",
    ...(isOneTest && dropHeightMetres !== undefined ? { dropHeightMetres } : {}),
  });
  return group.length === 1 ? `the ${name} ${first.file}` : `${group.length} ${plural(name, group.length)}`;
}

function notCounted({ length }: readonly TrialResult[]): string {
  return length === 1 ? "it does not count" : "they do not count";
}

function these({ length }: readonly TrialResult[]): string {
  return length === 1 ? "this one" : `these ${length}`;
}

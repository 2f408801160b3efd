import type { Finding } from "../ground/finding.ts";
import { asSentence, sentences, withoutOptions } from "../ground/plain-words.ts";
import type { SessionResult } from "../result/session-result.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";
import { trialName } from "./sheet-trials.ts";

/** Everything found about the session and its trials, one line a finding; equal ones name all their trials. */
export function findingsInWords(session: SessionResult): readonly string[] {
  const { findings, trials } = session;
  const placed = trials.flatMap((trial) =>
    trial.findings.map((finding) => ({
      name: placeInWords(trialName(trial, trials), finding),
      text: inWords(finding),
    })),
  );
  const texts = [...new Set(placed.map((each) => each.text))];
  return [
    ...findings.map((finding) =>
      findingInWords(finding, english).where === ""
        ? inWords(finding)
        : `${placeInWords("", finding)}: ${inWords(finding)}`,
    ),
    ...texts.map((text) => {
      const names = placed.filter((each) => each.text === text).map((each) => each.name);
      return `${[...new Set(names)].join(", ")}: ${text}`;
    }),
  ];
}

function placeInWords(name: string, finding: Finding): string {
  const { where } = findingInWords(finding, english);
  return [name, where].filter((part) => part !== "").join(", ");
}

function inWords(finding: Finding): string {
  const { message, action } = findingInWords(finding, english);
  return sentences(asSentence(message), asSentence(withoutOptions(action)));
}

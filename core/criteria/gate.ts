import type { Finding } from "../finding.ts";
import { type EffusionGrade, effusionGrades, type SessionDescription } from "../session.ts";
import { wholeDocument } from "../session-expectation.ts";
import type { Settings } from "../settings.ts";

/** Whether statuses may be given today, with the reason in words. */
export interface Gate {
  readonly open: boolean;
  readonly reason: string;
}

function rank(grade: string): number {
  const at = effusionGrades.indexOf(grade as EffusionGrade);
  if (at < 0) throw new RangeError(`There is no effusion grade called "${grade}".`);
  return at;
}

/** A person's words, closed with a full stop if they forgot it. */
function sentence(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}

/** Entries that decide the gate, with the spellings a person may have meant them by. */
const gateEntries: readonly (readonly [spellings: RegExp, words: string])[] = [
  [/pain/i, "pain"],
  [/eff?us|swell/i, "effusion"],
  [/^stop/i, "a stop"],
];

/** Entries of the session's description that would decide the gate but could not be read; empty where there is none. */
function unreadEntries(findings: readonly Finding[]): string {
  const unread = findings.filter((each) => each.code === "session-unreadable").map((each) => each.where);
  if (unread.includes(wholeDocument)) return "pain, effusion and a stop";
  return gateEntries
    .filter(([spellings]) => unread.some((where) => spellings.test(where.split(/[.[]/)[0] ?? "")))
    .map(([, words]) => words)
    .join(" and ");
}

/**
 * The gate: effusion above the clinic's grade, pain above the clinic's limit or a stopped session closes
 * it; measurements are still shown, statuses are withheld for the day. What nobody recorded closes nothing and is said; what
 * somebody recorded and nobody can read closes it, because it might have been the reason to.
 *
 * @param findings those made while reading the description
 */
export function gateOf(description: SessionDescription, settings: Settings, findings: readonly Finding[] = []): Gate {
  const { effusion, pain, stopped } = description;
  const closing: string[] = [];
  if (stopped !== undefined) closing.push(sentence(`The session was stopped: ${stopped.reason}`));
  if (effusion !== undefined && rank(effusion) > rank(settings.gateEffusionGrade)) {
    closing.push(`Effusion ${effusion} is above the clinic's limit (${settings.gateEffusionGrade}).`);
  }
  if (pain !== undefined && pain > settings.gatePain) {
    closing.push(`Pain ${pain} of 10 is above the clinic's limit (${settings.gatePain}).`);
  }
  const unread = unreadEntries(findings);
  if (unread !== "") closing.push(`What session.json says about ${unread} cannot be read.`);
  if (closing.length > 0) return { open: false, reason: closing.join(" ") };
  const within = [
    ...(effusion === undefined ? [] : [`effusion ${effusion}`]),
    ...(pain === undefined ? [] : [`pain ${pain} of 10`]),
  ].join(" and ");
  const unknown = [...(effusion === undefined ? ["effusion"] : []), ...(pain === undefined ? ["pain"] : [])].join(
    " and ",
  );
  const said = within === "" ? "" : `Within the clinic's limits: ${within}.`;
  const silent = unknown === "" ? "" : `Not recorded: ${unknown}.`;
  return { open: true, reason: [said, silent].filter((each) => each !== "").join(" ") };
}

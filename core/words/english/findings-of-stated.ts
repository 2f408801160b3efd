import type { StatedFindings } from "../../ground/findings/stated-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";

const startAgain = "Start from a session.json that this program wrote";
const correctThere =
  "Correct it there (a comma, a quotation mark or a brace is the usual cause); until then nothing of it is used.";
const saveAgain = "Save the layout again from a file of its kind.";

/** What is said of the findings of `core/stated`. */
export const findingsOfStated: FindingSentences<StatedFindings> = {
  "session-unreadable/entry": ({ entry, ...misfit }) => ({
    message: `session.json ${notUnderstood(misfit)}`,
    action: `Correct it; until then ${entry ?? "this entry"} is left out, the others are used.`,
  }),
  "session-unreadable/no-object": ({ found }) => ({
    message: `session.json is not understood: an object in braces is expected, found ${found}.`,
    action: `${startAgain}.`,
  }),
  "session-unreadable/unknown-entry": ({ key, known }) => ({
    message: `session.json has an entry called "${key}", which means nothing here.`,
    action: `Check its spelling; the entries known are ${known.join(", ")}.`,
  }),
  "session-unreadable/empty": () => ({ message: "session.json is empty.", action: correctThere }),
  "session-unreadable/no-json": ({ line, character }) => ({
    message: `session.json stops being JSON in line ${line}, character ${character}.`,
    action: correctThere,
  }),
  "session-unreadable/beyond-limits": ({ reason }) => ({
    message: `session.json was not read: it ${reason}.`,
    action: `${startAgain}; until then nothing of it is used.`,
  }),
  "session-unreadable/more-places": ({ others }) => ({
    message: `session.json is not understood at ${others} more ${others === 1 ? "place" : "places"}.`,
    action: "Correct the places named first; until then those entries are left out, the others are used.",
  }),
  "encoding-guessed/session": () => ({
    message: "session.json is not UTF-8; it was read as Windows-1252.",
    action: "Look at names with accents, and save the file as UTF-8.",
  }),
  "layout-unreadable/beyond-limits": ({ reason }) => ({
    message: `The saved layout was not read: it ${reason}.`,
    action: saveAgain,
  }),
  "layout-unreadable/no-json": () => ({ message: "The saved layout is no JSON.", action: saveAgain }),
  "layout-unreadable/entry": (misfit) => ({
    message: `The saved layout ${notUnderstood(misfit)}`,
    action: saveAgain,
  }),
};

function notUnderstood({ path, expected, found }: StatedFindings["layout-unreadable/entry"]): string {
  return `is not understood at ${path}: ${expected} is expected${found === undefined ? "" : `, found ${found}`}.`;
}

import type { MatchExtended, ZxcvbnFactory } from "@zxcvbn-ts/core";
import { RequestRefused } from "../request-refused.ts";

/**
 * Guesses that a new passphrase must be worth. A guess costs a run of scrypt with 64 MB of memory or more
 * (passphrase-cost.ts), of which one good graphics card does about a thousand a second (from memory): ten thousand
 * million of them keep it busy for four months. *Common practice*: the best of the five classes of the estimate used.
 */
export const fewestGuesses = 1e10;

/** Below this there is no need to measure. */
const fewestLetters = 8;

/** How a passphrase is made, where that makes it weak. */
const reasons: Readonly<Record<string, string>> = {
  passwords: "is among those that are tried first",
  userInputs: "holds a name that is known here",
  words: "is made of few, common words",
  wordSequence: "is made of few, common words",
  spatial: "follows keys that lie side by side",
  repeat: "says one thing again and again",
  sequence: "follows the order of letters or figures",
  date: "holds a date",
  regex: "holds a year",
};

/**
 * What makes a new passphrase weak, measured by estimating in how many guesses it would be found: common passphrases,
 * English words and names, keyboard patterns, repeats, orders, dates. Words of other languages count as letters, and so
 * for more than they are worth. Nothing is said of passphrases that are only used to open something.
 *
 * The estimate needs a text: what it makes of the passphrase stays in the memory of the thread until that ends.
 *
 * @param passphrase bytes of passphraseBytes: NFKC, blanks at its ends included
 * @param known words that say little in it, such as the user's name
 * @returns a whole sentence; undefined where it is strong enough
 */
export async function weaknessOf(passphrase: Uint8Array, known: readonly string[]): Promise<string | undefined> {
  const text = new TextDecoder().decode(passphrase);
  if (/^\s*$/u.test(text)) return weak("is made of blanks alone");
  if ([...text].length < fewestLetters) return weak(`is shorter than ${fewestLetters} letters`);
  const { guesses, sequence } = (await estimate()).check(text, [...known]);
  return guesses >= fewestGuesses ? undefined : weak(mainReason(sequence));
}

/**
 * Lets a new passphrase through that is strong enough, and none at all.
 * @throws RequestRefused with the weakness; to be called before anything is done
 */
export async function requireStrength(passphrase: Uint8Array | undefined, known: readonly string[]): Promise<void> {
  const weakness = passphrase === undefined ? undefined : await weaknessOf(passphrase, known);
  if (weakness !== undefined) throw new RequestRefused(`${weakness} Nothing was changed or written.`);
}

function weak(reason: string): string {
  return `This passphrase would be guessed too soon: it ${reason}. Four words that do not belong together hold for long.`;
}

/** By the longest part that is more than letters at random. */
function mainReason(sequence: readonly MatchExtended[]): string {
  const named = sequence
    .map((match) => ({ reason: reasonOf(match), length: match.token.length }))
    .filter(({ reason }) => reason !== undefined)
    .toSorted((first, second) => second.length - first.length);
  return named[0]?.reason ?? "is too short for letters at random";
}

function reasonOf(match: MatchExtended): string | undefined {
  if (match.pattern !== "dictionary") return reasons[match.pattern];
  const dictionary = String(match.dictionaryName);
  if (dictionary === "userInputs") return reasons.userInputs;
  return dictionary.startsWith("passwords") ? reasons.passwords : reasons.words;
}

let made: Promise<ZxcvbnFactory> | undefined;

/** Its dictionaries take half a second and 100 MB to load, so only where a passphrase is set. */
function estimate(): Promise<ZxcvbnFactory> {
  made ??= Promise.all([
    import("@zxcvbn-ts/core"),
    import("@zxcvbn-ts/language-common"),
    import("@zxcvbn-ts/language-en"),
  ]).then(
    ([core, common, english]) =>
      new core.ZxcvbnFactory({
        dictionary: { ...common.dictionary, ...english.dictionary },
        graphs: common.adjacencyGraphs,
      }),
  );
  return made;
}

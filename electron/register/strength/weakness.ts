import type { MatchExtended, ZxcvbnFactory } from "@zxcvbn-ts/core";

/** A new passphrase and what is known here. */
export interface ToWeigh {
  /** Bytes of passphraseBytes: NFKC, blanks at its ends included. */
  readonly passphrase: Uint8Array;
  /** Words that say little in it, such as the user's name. */
  readonly known: readonly string[];
}

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
 * The estimate needs a text, and what it makes of that stays in memory: this runs in a process of its own (weigh-apart.ts).
 *
 * @returns a whole sentence; undefined where it is strong enough
 */
export async function weaknessOf({ passphrase, known }: ToWeigh): Promise<string | undefined> {
  const text = new TextDecoder().decode(passphrase);
  if (/^\s*$/u.test(text)) return weak("is made of blanks alone");
  if ([...text].length < fewestLetters) return weak(`is shorter than ${fewestLetters} letters`);
  const { guesses, sequence } = (await estimate()).check(text, [...known]);
  return guesses >= fewestGuesses ? undefined : weak(mainReason(sequence));
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

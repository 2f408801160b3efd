import { RequestRefused } from "../../refusals/request-refused.ts";
import { weighApart } from "./weigh-apart.ts";

/**
 * What makes a new passphrase weak; nothing of it stays in the memory of this process. Nothing is said of passphrases that are only used to
 * open something.
 *
 * @param passphrase bytes of passphraseBytes: NFKC, blanks at its ends included
 * @param known words that say little in it, such as the user's name
 * @returns a whole sentence; undefined where it is strong enough
 */
export function weaknessOf(passphrase: Uint8Array, known: readonly string[]): Promise<string | undefined> {
  return weighApart({ passphrase, known });
}

/**
 * Lets a new passphrase through that is strong enough, and none at all.
 * @throws RequestRefused with the weakness; to be called before anything is done
 */
export async function requireStrength(passphrase: Uint8Array | undefined, known: readonly string[]): Promise<void> {
  const weakness = passphrase === undefined ? undefined : await weaknessOf(passphrase, known);
  if (weakness !== undefined) throw new RequestRefused(`${weakness} Nothing was changed or written.`);
}

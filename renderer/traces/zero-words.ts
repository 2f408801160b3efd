import { roundTo } from "../../core/ground/format-number.ts";
import { keepUnits, listInWords } from "../../core/ground/plain-words.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { inPlateWords } from "../../core/words/english/plate-words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traces;

/** What the empty plates read and was taken off, plate by plate; "" where nothing was that rounds to a tenth of a newton. */
export function zeroWords({ plates }: Pick<TrialResult, "plates">): string {
  const zeroed = plates.flatMap(({ name, zeroNewtons }) =>
    zeroNewtons === undefined || Math.abs(zeroNewtons) < leastShown
      ? []
      : [prose.zeroOf(roundTo(zeroNewtons, 1), plates.length > 1 ? prose.onPlate(inPlateWords(name)) : "")],
  );
  return zeroed.length === 0 ? "" : keepUnits(prose.zeroTakenOff(listInWords(zeroed)));
}

/** Newtons; anything less is shown as 0.0. */
const leastShown = 0.05;

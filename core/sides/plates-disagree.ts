import { type Finding, proseFinding } from "../ground/finding.ts";
import { formatPercent, roundTo } from "../ground/format-number.ts";
import { countOf, listInWords } from "../ground/plain-words.ts";
import type { Settings } from "../settings/settings.ts";
import { type PlateGains, plateDifferences } from "../weight/plate-gains.ts";
import { inPlateWords, plateWordsFirst } from "../words/english/plate-words.ts";
import { english } from "../words/english.ts";
import type { Comparison } from "./comparison.ts";

/** So many indices and trials are named. No setting: it shortens a sentence. */
const mostNamed = 4;

/** Says which plates read apart, by how much, from which trials, and which indices that moves (METHODS §2). */
export function platesDisagree(
  gains: PlateGains,
  comparisons: readonly Comparison[],
  settings: Settings,
): readonly Finding[] {
  return plateDifferences(gains).flatMap(({ first, second, difference, uncertainty, trials }) => {
    const size = Math.abs(difference);
    if (!(size > settings.plateGainSd * uncertainty && size > settings.plateGainFinding)) return [];
    const [more, less] = difference > 0 ? [first, second] : [second, first];
    return [
      proseFinding(
        "plates-disagree",
        "warning",
        `${plateWordsFirst(more)} reads ${roundTo(100 * size, 2)} % ± ${roundTo(100 * uncertainty, 2)} % more than ${inPlateWords(less)}, by the standing in ${countOf(trials, "trial")}. ${moved(comparisons, settings)}`,
        "Put one known mass on each plate in turn and have the one that is off calibrated. Two people on different plates look the same: check whose recordings these are.",
        { where: namesOf(gains) },
      ),
    ];
  });
}

/** Which indices the plates move, from what to what. */
function moved(comparisons: readonly Comparison[], settings: Settings): string {
  const touched = comparisons.flatMap(({ plateShare, index, measure, test, legs }) => {
    if (plateShare === undefined || index === undefined) return [];
    const without = index * Math.exp(-plateShare.onIndex.difference);
    const name = `${english.measures.fullLabel(measure)}, ${legs === "both" ? "two-leg" : "single-leg"} ${english.tests.label(test)}`;
    return [`${name} (${roundTo(index, 1)} would be ${roundTo(without, 1)} %)`];
  });
  if (touched.length === 0) return "It is in no index of this session.";
  const named = touched.slice(0, mostNamed);
  const more = touched.length - named.length;
  const list = more === 0 ? listInWords(named) : `${named.join(", ")} and ${more} more`;
  const farApart = comparisons.some(
    ({ plateShare }) => plateShare !== undefined && Math.abs(plateShare.difference) > settings.plateGainNoStatus,
  );
  const status = farApart
    ? ` Above ${formatPercent(100 * settings.plateGainNoStatus)} no symmetry of forces has a status.`
    : "";
  return `It moves ${list}; their intervals hold it, no value is corrected.${status}`;
}

function namesOf({ from }: PlateGains): string {
  const names = [...new Set(from.map(({ file }) => file))];
  const named = names.slice(0, mostNamed);
  return names.length > named.length ? `${named.join(", ")} and ${names.length - named.length} more` : named.join(", ");
}

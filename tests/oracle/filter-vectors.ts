import { readFileSync } from "node:fs";
import { designButterworth, singlePassCutoffHz } from "../../core/recording/filter-design.ts";
import { zeroLagFilter } from "../../core/recording/zero-lag-filter.ts";
import { defaultSettings } from "../../core/settings/settings.ts";

/** What SciPy makes of some signals with the zero-lag filter's own section; the calls stand in the file. */
export interface FilterVectors {
  readonly from: string;
  readonly scipy: string;
  readonly cases: readonly {
    readonly name: string;
    readonly rateHz: number;
    readonly cutoffHz: number;
    /** b0, b1, b2, a0, a1, a2. */
    readonly section: readonly number[];
    readonly input: readonly number[];
    readonly expected: readonly number[];
  }[];
}

/** The committed vectors. */
export function committedFilterVectors(): FilterVectors {
  return JSON.parse(readFileSync(new URL("filter-vectors.json", import.meta.url), "utf8")) as FilterVectors;
}

/** Largest difference between the program's filtered signals and SciPy's, each relative to the largest value. */
export function worstFilterDifference(vectors: FilterVectors): number {
  let worst = 0;
  for (const { name, rateHz, cutoffHz, input, expected } of vectors.cases) {
    const filtered = zeroLagFilter(Float64Array.from(input), rateHz, cutoffHz, defaultSettings);
    if (filtered.length !== expected.length) throw new RangeError(`The filter changed the length of "${name}".`);
    const size = Math.max(...expected.map(Math.abs));
    for (const [index, value] of expected.entries()) worst = Math.max(worst, Math.abs(filtered[index]! - value) / size);
  }
  return worst;
}

/** Largest difference between the coefficients of the program's sections and SciPy's. */
export function worstSectionDifference(vectors: FilterVectors): number {
  let worst = 0;
  for (const { rateHz, cutoffHz, section } of vectors.cases) {
    const { b0, b1, b2, a1, a2 } = designButterworth(rateHz, singlePassCutoffHz(rateHz, cutoffHz));
    const ours = [b0, b1, b2, 1, a1, a2];
    for (const [index, value] of section.entries()) worst = Math.max(worst, Math.abs(ours[index]! - value));
  }
  return worst;
}

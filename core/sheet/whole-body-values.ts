import { formatSheetValue } from "../ground/format-number.ts";
import { measureEntry } from "../ground/measures/catalogue.ts";
import { capitalised } from "../ground/plain-words.ts";
import { displayUnit } from "../ground/units.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { Settings } from "../settings/settings.ts";
import { mean, median, trialStatisticOf } from "../sides/trial-statistic.ts";
import { english } from "../words/english.ts";
import type { SheetBlock, SheetCell } from "./document.ts";
import { groupName, type TrialGroup, trialGroups } from "./sheet-trials.ts";

/** Measures of the whole body that are shown for two-leg trials, in this order. */
const shown = [
  "jumpHeightImpulse",
  "jumpHeightFlightTime",
  "reactiveStrengthIndexModified",
  "reactiveStrengthIndex",
  "contactTime",
  "dropHeightEffective",
  "reactiveStrengthIndexBestFive",
  "hopStiffness",
  "timeToTakeoff",
  "countermovementDepth",
  "peakPropulsionPowerPerBodyMass",
] as const;

/** What both legs did together in the trials used: the trial statistic with the lowest and highest trial. */
export function wholeBodyValues(session: SessionResult, settings: Settings): readonly SheetBlock[] {
  return trialGroups(session.trials.filter(countsInMeans))
    .filter((group) => group.legs === "both")
    .map((group) => table(group, settings));
}

function table(group: TrialGroup, settings: Settings): SheetBlock {
  const statistic = trialStatisticOf(settings);
  const middle = statistic === "mean" ? mean : statistic === "median" ? median : undefined;
  const rows = shown.flatMap((id) => {
    const values = group.trials.flatMap((trial) =>
      trial.measures.filter((each) => each.id === id && each.side === "both").map((each) => each.value),
    );
    if (values.length === 0) return [];
    const { unit } = measureEntry(id);
    const cell = (value: number): SheetCell => ({ text: formatSheetValue(value, undefined, unit).value, align: "end" });
    const { symbol } = displayUnit(unit);
    const cells: readonly SheetCell[] = [
      { text: english.measures.fullLabel(id), ...(symbol !== "" && { muted: symbol }), align: "start" },
      ...(middle === undefined ? [] : [{ ...cell(middle(values)), emphasis: "strong" as const }]),
      cell(Math.min(...values)),
      cell(Math.max(...values)),
      { text: String(values.length), align: "end" },
    ];
    return [{ cells }];
  });
  return {
    kind: "table",
    caption: `${capitalised(groupName(group))}: both legs together`,
    columns: [
      { text: "Measure", align: "start", wide: true },
      ...(middle === undefined ? [] : [{ text: statistic, align: "end" } as const]),
      { text: "lowest", align: "end" },
      { text: "highest", align: "end" },
      { text: "trials", align: "end" },
    ],
    rows,
  };
}

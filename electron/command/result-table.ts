import { isOfLimb } from "../../core/events/event.ts";
import { loadWords, testLoads } from "../../core/gate/test-load.ts";
import { formatPercent, formatValue, joinNumberText, percentDigits, roundTo } from "../../core/ground/format-number.ts";
import type { Bearer } from "../../core/ground/limb.ts";
import { measureCatalogue } from "../../core/ground/measures/catalogue.ts";
import { asSentence, capitalised, listInWords } from "../../core/ground/plain-words.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { groupName } from "../../core/sheet/sheet-trials.ts";
import type { Comparison } from "../../core/sides/comparison.ts";
import { english } from "../../core/words/english.ts";
import { joinPath } from "../files/recording-names.ts";
import { columnsOfText } from "./columns-of-text.ts";
import { findingLine } from "./finding-line.ts";

const bearers: readonly Bearer[] = [{ side: "both" }, { side: "left" }, { side: "right" }, { plate: 1 }, { plate: 2 }];

const limbWords = { both: "both legs", left: "left leg", right: "right leg" } as const;

/** Results for reading in a terminal: each trial with its measures, uncertainties and findings, then sides and criteria. */
export function resultTable(results: readonly SessionResult[]): string {
  const blocks = results.flatMap((result) => [
    ...sessionHead(result),
    ...result.trials.map((trial) => trialBlock(result.folder, trial)),
    ...sideBlocks(result),
  ]);
  return `${blocks.join("\n\n")}\n\n${closing}\n`;
}

const closing =
  "Values after ± are standard uncertainties (k = 1). Forms per body mass and per body weight: --format csv or json.";

function sessionHead({ folder, description, findings }: SessionResult): readonly string[] {
  const facts = [folder, description.athlete?.code, description.milestone, description.date]
    .filter((part) => part !== undefined && part !== "")
    .join(" · ");
  const simulated = description.simulated ? "Simulated recordings." : "";
  const lines = [facts, simulated, ...findings.map(findingLine)].filter((line) => line !== "");
  return lines.length > 0 ? [lines.join("\n")] : [];
}

function trialBlock(folder: string, trial: TrialResult): string {
  const what = [
    ...(trial.test === undefined ? [] : [english.tests.label(trial.test)]),
    ...trialLimb(trial),
    trial.status,
    ...(trial.excluded === undefined ? [] : [`excluded: ${trial.excluded.reason}`]),
    ...(trial.held === undefined ? [] : [`held out of means: ${trial.held.reason}`]),
    ...(trial.kept ? ["kept although its weight differs"] : []),
    ...(trial.practice ? ["practice jump"] : []),
  ];
  const parts = [
    `${joinPath(folder, trial.file)} trial ${trial.trial}: ${what.join(", ")}`,
    eventLine(trial),
    measureLines(trial),
    trial.findings.map(findingLine).join("\n"),
  ];
  return parts.filter((part) => part !== "").join("\n");
}

function headingOf(name: string): string {
  return Object.hasOwn(limbWords, name) ? limbWords[name as keyof typeof limbWords] : name;
}

function trialLimb(trial: TrialResult): readonly string[] {
  const bearer = trialBearer(trial);
  if (bearer === undefined) return [];
  return [bearer.side === undefined ? `one leg on ${english.limbs.bearer(bearer)}` : limbWords[bearer.side]];
}

function eventLine({ events }: TrialResult): string {
  const whole = events.filter((event) => !isOfLimb(event));
  const words = whole.map(
    (event) =>
      `${english.events.label(event.name)} ${roundTo(event.time, 4)} s${event.from === "edited" ? " (moved)" : ""}`,
  );
  return words.length > 0 ? `  Events: ${words.join(", ")}` : "";
}

function measureLines({ measures }: TrialResult): string {
  const present = bearers
    .map(english.limbs.bearer)
    .filter((name) => measures.some((measure) => english.limbs.bearer(measure) === name));
  if (present.length === 0) return "";
  const rows = measureCatalogue
    .filter(({ id, formOf }) => formOf === undefined && measures.some((measure) => measure.id === id))
    .map(({ id }) => [
      english.measures.fullLabel(id),
      ...present.map((name) => {
        const measure = measures.find((each) => each.id === id && english.limbs.bearer(each) === name);
        return measure === undefined
          ? ""
          : joinNumberText(formatValue(measure.value, measure.uncertainty, measure.unit));
      }),
    ]);
  return columnsOfText([["Measure", ...present.map((name) => headingOf(name))], ...rows], "  ");
}

function sideBlocks(result: SessionResult): readonly string[] {
  const blocks: string[] = [];
  if (result.comparisons.length > 0) {
    blocks.push(columnsOfText(comparisonRows(result.comparisons), "  "));
  }
  if (result.criteria.length > 0) {
    const gate = gateLines(result);
    const lines = result.criteria.map((each) => {
      // What closes tests stands above them all.
      const reason = each.status === "withheld-today" ? "" : each.reason;
      const more = [reason, each.caution, each.moreTrials].filter((part) => part !== "").join(" ");
      const head = `  ${each.criterion.label}, ${english.statuses.threshold(each.criterion).replaceAll("\u00a0", " ")}: ${english.statuses.words(each)}`;
      return more === "" ? head : `${head}\n    ${more}`;
    });
    blocks.push([`Criteria: ${result.criteriaSet.name}`, ...gate, ...lines, ...kneeLines(result)].join("\n"));
  }
  return blocks;
}

/** What closes tests today, each with what it closes, and who opened what; where nothing does, what was read. */
function gateLines({ gate }: SessionResult): readonly string[] {
  const closed = gate.closures.map(({ reason, loads, limbs }) => {
    const what = loads.length === testLoads.length ? "every jump" : listInWords(loads.map(loadWords));
    const whose = limbs === undefined ? "" : `, ${listInWords(limbs.map((limb) => limbWords[limb]))}`;
    return `  Closed (${what}${whose}): ${reason}`;
  });
  const opened = gate.opened.map(
    ({ closure, opening }) => `  Opened by ${opening.by}: ${closure.reason} Reason: ${asSentence(opening.reason)}`,
  );
  return closed.length === 0 && gate.reason !== "" ? [`  ${gate.reason}`, ...opened] : [...closed, ...opened];
}

/** The knee's own rows, which nothing withholds. */
function kneeLines({ knee }: SessionResult): readonly string[] {
  return knee.map(
    ({ label, threshold, status, reason }) =>
      `  ${label}, ${threshold}: ${english.statuses.label(status)}\n    ${reason}`,
  );
}

function sideHeads(comparisons: readonly Comparison[]): readonly [string, string] {
  return comparisons.some((each) => each.basis === "involved-uninvolved")
    ? ["involved", "uninvolved"]
    : ["left", "right"];
}

/** Each test, number of legs and box under its own name, because the same measure stands in several. */
function comparisonRows(comparisons: readonly Comparison[]): readonly (readonly string[])[] {
  const header = ["Sides", ...sideHeads(comparisons), "index or difference", "interval"];
  const names = [...new Set(comparisons.map(groupName))];
  const groups = names.flatMap((name) => [
    [capitalised(name)],
    ...comparisons.filter((each) => groupName(each) === name).map(comparisonRow),
  ]);
  return [header, ...groups];
}

function comparisonRow(comparison: Comparison): readonly string[] {
  const { measure, unit, first, second, index, difference, intervals } = comparison;
  const [decides] = intervals;
  const mean = (side: Comparison["first"]) =>
    `${english.limbs.bearer(side)} ${joinNumberText(formatValue(side.mean, undefined, unit))} (n = ${side.values.length})`;
  return [
    `  ${english.measures.fullLabel(measure)}`,
    mean(first),
    mean(second),
    difference === undefined ? formatPercent(index) : joinNumberText(formatValue(difference, undefined, unit)),
    decides === undefined
      ? ""
      : `${percentDigits(decides.low)} to ${percentDigits(decides.high)} % (${Math.round(decides.confidence * 100)} %)`,
  ];
}

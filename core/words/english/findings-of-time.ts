import type { NamedTimeUnit, StatementSource, UnitlessRate } from "../../ground/findings/file-parts.ts";
import type { TimeFindings } from "../../ground/findings/time-findings.ts";
import type { FindingSentences, Told } from "../finding-sentences.ts";
import { columnInWords, hertz, lineInWords, sourceInWords } from "./file-parts-in-words.ts";

const unitNames: Readonly<Record<NamedTimeUnit, string>> = { s: "seconds", ms: "milliseconds", µs: "microseconds" };
const ownClock = "Prefer times from the plate's own clock.";
const checkAtSource = "Check the rate at the source.";

/** What is said of the time base of a table. */
export const findingsOfTime: FindingSentences<TimeFindings> = {
  "rate-missing/no-time-column": ({ header }) => rateMissing("The file has no time column.", header),
  "rate-missing/samples-counted": ({ header }) => rateMissing("The file counts its samples but has no times.", header),
  "rate-missing/unit-not-said": ({ header }) =>
    rateMissing("Its time column may count rows, milliseconds or seconds, and the file does not say which.", header),
  "rate-missing/unit-unknown": ({ written, header }) =>
    rateMissing(`The unit of its time column (${written}) is not one of s, ms and µs.`, header),
  "rate-contradicts/stated-outside": ({ rateHz, leastHz, mostHz }) => ({
    message: `The stated rate of ${hertz(rateHz)} is outside ${leastHz} to ${mostHz} Hz.`,
    action: "State the rate of the recording.",
  }),
  "rate-contradicts/wanted-outside": ({ rateHz, leastHz, mostHz }) => ({
    message: `The wanted rate of ${hertz(rateHz)} is outside ${leastHz} to ${mostHz} Hz.`,
    action: "Ask for another rate.",
  }),
  "rate-contradicts/header-outside": ({ rateHz, source, leastHz, mostHz }) => ({
    message: `The header's rate of ${hertz(rateHz)} (${sourceInWords(source)}) is outside ${leastHz} to ${mostHz} Hz.`,
    action: "State the rate.",
  }),
  "rate-contradicts/time-unit": ({ unit, rateHz, leastHz, mostHz, readings }) => {
    const others = readings.map((each) => `as ${unitNames[each.unit]} it would be ${hertz(each.rateHz)}`);
    return {
      message: `The time column in ${unitNames[unit]} gives ${hertz(rateHz)}, outside ${leastHz} to ${mostHz} Hz${others.length === 0 ? "" : `; ${others.join(", ")}`}.`,
      action: "Correct the unit above the column, or state the rate and leave the time column out.",
    };
  },
  "rate-contradicts/time-column": ({ rateHz, source, columnHz }) => ({
    message: `${source.from === "line" ? `The header says ${hertz(rateHz)} (${lineInWords(source)})` : wasStated(rateHz, source)}, but the time column gives ${hertz(columnHz)}.`,
    action:
      source.from === "line"
        ? "State the sampling rate."
        : "Correct the stated rate, or leave it out to use the time column.",
  }),
  "rate-contradicts/time-column-used": ({ rateHz, source, columnHz }) => ({
    message: `${wasStated(rateHz, source)}, but the time column gives ${hertz(columnHz)}, which was used.`,
    action: "Leave the stated rate out if the time column is right.",
  }),
  "rate-contradicts/header": (figures) => ({
    message: `${againstHeader(figures)}.`,
    action: "State which rate is right.",
  }),
  "rate-contradicts/header-not-used": (figures) => ({
    message: `${againstHeader(figures)}, which was used.`,
    action: checkAtSource,
  }),
  "rate-contradicts/unitless": ({ number, line, usedHz }) => ({
    message: `The header gives a rate of ${number} without a unit (${lineInWords(line)}), but ${hertz(usedHz)} was used.`,
    action: checkAtSource,
  }),
  "rate-low/weight-alone": ({ rateHz, leastHz }) => ({
    message: `At ${hertz(rateHz)} only body weight and mass can be measured; events need at least ${leastHz} Hz.`,
    action: "Record at 1000 Hz.",
  }),
  "rate-low/less-accurate": ({ rateHz, wantedHz }) => ({
    message: `At ${hertz(rateHz)} events and heights lose accuracy; ${wantedHz} Hz or more is wanted.`,
    action: "Record at 1000 Hz.",
  }),
  resampled: ({ fromHz, toHz, wereUneven }) => ({
    message: `Samples ${wereUneven ? `at uneven times, ${hertz(fromHz)} on average,` : `at ${hertz(fromHz)}`} were put on an even time base of ${hertz(toHz)} by straight lines between them, as asked.`,
    action: "Leave the request out to use the samples as they are.",
  }),
  "time-uneven/backwards": ({ line, from, to, others }) => ({
    message: `Time stands still or runs backwards in line ${line}: ${from} is followed by ${to}${morePlaces(others)}.`,
    action: "Export the recording again; rows may be repeated or out of order.",
  }),
  "gap/stamps": ({ line, from, to, others }) => ({
    message: `Samples are missing before line ${line}: time goes from ${from} to ${to}${morePlaces(others)}.`,
    action: "Export the recording again without missing samples.",
  }),
  "gap/counter": ({ counter, line, from, to, others }) => ({
    message: `The counter in column ${columnInWords(counter)} goes from ${from} to ${to} at line ${line}${others > 0 ? ` (and at ${others} more)` : ""}, although time runs on: samples may be missing.`,
    action: "Export the recording again, and compare its length with what was recorded.",
  }),
  "time-uneven/steps": ({ line, others, isResampled }) => ({
    message: `The time step before line ${line} differs from the others${morePlaces(others)}${isResampled ? "" : "; an even time base was used"}.`,
    action: ownClock,
  }),
  "time-uneven/no-even-base": ({ line, samples, isResampled }) => ({
    message: `The stamps fit no even time base: line ${line} lies ${samples.toFixed(1)} samples off.`,
    action: isResampled ? ownClock : "Export the recording again at one sampling rate, or ask for an even time base.",
  }),
  "time-uneven/too-coarse": ({ resolution }) => ({
    message: `The stamps are printed to ${resolution}, coarser than the time step, so that missing samples cannot be seen.`,
    action: "Export the recording with more decimals, or without the time column and state the rate.",
  }),
  "time-uneven/coarse": ({ resolution, unit, rateHz }) => ({
    message: `The stamps are printed to ${resolution} ${unit}, coarser than the time step; ${hertz(rateHz)} explains every one of them.`,
    action: "Export the time column with more decimals.",
  }),
  "time-uneven/no-rate-explains": ({ resolution, unit }) => ({
    message: `No sampling rate explains all stamps, which are printed to ${resolution} ${unit}: a sample may be missing.`,
    action: "Export the recording with more decimals in the time column.",
  }),
  "time-uneven/not-rising": () => ({
    message: "The time column does not rise from row to row.",
    action: "State which column is time, or export the recording again.",
  }),
};

function rateMissing(why: string, header: UnitlessRate | undefined): Told {
  return {
    message: `The sampling rate is not known. ${why}${header === undefined ? "" : ` ${withoutUnit(header)}`}`,
    action: "State the sampling rate.",
  };
}

/** A header line that speaks of the rate without saying it in full is named in the question. */
function withoutUnit({ number, ...line }: UnitlessRate): string {
  return number === undefined
    ? `The header's rate has two readings (${lineInWords(line)}).`
    : `The header gives ${number} without a unit (${lineInWords(line)}).`;
}

/** "1000 Hz was stated", "1000 Hz was stated by the layout "Lab A"". */
function wasStated(rateHz: number, source: StatementSource): string {
  return `${hertz(rateHz)} was stated${source.from === "person" ? "" : ` ${sourceInWords(source)}`}`;
}

function againstHeader({ rateHz, line, usedHz, usedFrom }: TimeFindings["rate-contradicts/header"]): string {
  const other = {
    "time column": `the time column gives ${hertz(usedHz)}`,
    stated: `${hertz(usedHz)} was stated`,
    header: `another line says ${hertz(usedHz)}`,
  };
  return `The header says ${hertz(rateHz)} (${lineInWords(line)}), but ${other[usedFrom]}`;
}

function morePlaces(others: number): string {
  if (others === 0) return "";
  return others === 1 ? " (and at 1 more place)" : ` (and at ${others} more places)`;
}

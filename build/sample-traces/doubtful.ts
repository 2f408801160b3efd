import type { Severity } from "../../core/ground/finding.ts";
import type { FindingCode } from "../../core/ground/finding-codes.ts";
import { simulateBrokenOffJump } from "../../core/simulate/broken-off-jump.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import type { JumpOptions } from "../../core/simulate/options.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { makeDoubtfulBattery } from "./doubtful-battery.ts";
import type { Dialect } from "./write-delimited.ts";
import { commaDialect, writeDelimited } from "./write-delimited.ts";

/** A file with one fault, and the one finding it must bring. */
export interface DoubtfulFile {
  readonly file: string;
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly shows: string;
  /** What is said about it in `session.json`. */
  readonly said: Pick<FileEntry, "test" | "limb" | "dropHeightMetres" | "leadingLeg">;
  readonly text: string;
}

const massKg = 70;

const twoLegs: JumpOptions = {
  seed: 4000,
  rateHz: 1000,
  massKg,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.27,
  swayMetres: 0.0006,
  plateNoiseNewtons: 1.2,
  quietSecondsBefore: 2.1,
  quietSecondsAfter: 2.5,
};
const onePlate: JumpOptions = { ...twoLegs, plates: "one" };

function jump(base: JumpOptions, changes: Partial<JumpOptions>): SimulatedRecording {
  return simulateCountermovementJump({ ...base, ...changes });
}

/** The range ends 3 % below the true landing peak: a flat top, yet hardly any impulse is lost. */
function clippedLanding(): SimulatedRecording {
  const options: JumpOptions = { ...onePlate, seed: 4006, landingShape: "stiff" };
  const peak = simulateCountermovementJump(options).truth.phases.landing.peakForce.both;
  return simulateCountermovementJump({ ...options, clipNewtons: Math.round(0.97 * peak) });
}

const written = (recording: SimulatedRecording, dialect: Partial<Dialect> = {}): string =>
  writeDelimited(recording, { ...commaDialect, ...dialect });

function changeLines(text: string, change: (lines: string[]) => readonly string[]): string {
  return change(text.split("\n")).join("\n");
}

/** The file's second column of one line replaced. */
function replaceForce(line: string, cell: string): string {
  const cells = line.split(",");
  return [cells[0], cell, ...cells.slice(2)].join(",");
}

/** Every time stamp moved by up to 0.2 ms, in a fixed pattern; steps stay rising. */
function unevenTime(text: string): string {
  return changeLines(text, (lines) =>
    lines.map((line, index) => {
      const [time, ...forces] = line.split(",");
      const seconds = Number(time);
      if (index === 0 || time === undefined || time === "") return line;
      return [(seconds + 0.0002 * (((index * 7) % 11) / 10)).toFixed(4), ...forces].join(",");
    }),
  );
}

/** Files that are each refused or warned for exactly one code. */
export function makeDoubtfulFiles(): readonly DoubtfulFile[] {
  const both = (file: string, code: FindingCode, severity: Severity, shows: string, text: string): DoubtfulFile => ({
    file,
    code,
    severity,
    shows,
    said: { test: "countermovementJump", limb: "both" },
    text,
  });
  return [
    both(
      "weighing-short.csv",
      "weighing-short",
      "warning",
      "0.6 s of quiet standing before the jump instead of two seconds",
      written(jump(twoLegs, { seed: 4002, quietSecondsBefore: 0.6 })),
    ),
    both(
      "starts-in-movement.csv",
      "starts-moving",
      "warning",
      "the recording begins 0.2 s after the first movement",
      written(jump(twoLegs, { seed: 4004, startsAfterFirstMovementSeconds: 0.2 })),
    ),
    both(
      "clipped-landing.csv",
      "clipped",
      "warning",
      "the landing exceeds the range of the amplifier by a little and has a flat top",
      written(clippedLanding()),
    ),
    both(
      "broken-off.csv",
      "broken-off",
      "refusal",
      "a dip and a return to standing, no flight",
      written(
        simulateBrokenOffJump({
          seed: 4008,
          rateHz: 1000,
          massKg,
          plates: "two",
          swayMetres: 0.0006,
          plateNoiseNewtons: 1.2,
        }),
      ),
    ),
    both(
      "landing-beside-plates.csv",
      "landing-off-plate",
      "warning",
      "after take-off the plates stay empty to the end",
      written(jump(twoLegs, { seed: 4010, landsBesidePlates: true })),
    ),
    both(
      "landing-cut-short.csv",
      "landing-short",
      "warning",
      "the recording ends 0.15 s after touchdown",
      written(jump(twoLegs, { seed: 4012, endsAfterTouchdownSeconds: 0.15 })),
    ),
    {
      file: "other-foot-touching.csv",
      code: "other-foot-touching",
      severity: "warning",
      shows: "a single-leg jump in which the other foot presses up to 60 N during the push",
      said: { test: "countermovementJump", limb: "left" },
      text: written(
        jump(twoLegs, {
          seed: 4014,
          limb: "left",
          jumpHeightMetres: 0.14,
          otherFootNewtons: 60,
        }),
      ),
    },
    both(
      "heights-differ.csv",
      "heights-differ",
      "warning",
      "landing with bent knees: the centre of mass is 9 cm lower at touchdown than at take-off, so flight time flatters",
      written(jump(twoLegs, { seed: 4016, touchdownLowerMetres: 0.09 })),
    ),
    both(
      "rate-300-hz.csv",
      "rate-low",
      "warning",
      "300 samples a second",
      written(jump(twoLegs, { seed: 4018, rateHz: 300 })),
    ),
    both(
      "rate-100-hz.csv",
      "rate-low",
      "warning",
      "100 samples a second: only weight and mass remain",
      written(jump(twoLegs, { seed: 4020, rateHz: 100 })),
    ),
    both(
      "no-time-column.csv",
      "rate-missing",
      "refusal",
      "two force columns without time, and nobody states the rate",
      writeDelimited(jump(twoLegs, { seed: 4022 }), {
        delimiter: ",",
        decimalMark: ".",
        header: "units",
        unit: "N",
        lineEnd: "\n",
      }),
    ),
    both(
      "unit-not-stated.csv",
      "unit-not-stated",
      "refusal",
      "the header names the plates and no unit",
      written(jump(twoLegs, { seed: 4024 }), { header: "plain" }),
    ),
    both(
      "last-line-cut.csv",
      "truncated",
      "warning",
      "the file stops in the middle of its last line",
      written(jump(twoLegs, { seed: 4026 })).slice(0, -9),
    ),
    both(
      "gap.csv",
      "gap",
      "refusal",
      "0.08 s are missing during the quiet standing after the landing",
      changeLines(written(jump(twoLegs, { seed: 4028 })), (lines) => [...lines.slice(0, 5800), ...lines.slice(5880)]),
    ),
    both(
      "cells-unreadable.csv",
      "cells-unreadable",
      "refusal",
      "one NaN and one empty cell during the quiet standing after the landing",
      changeLines(written(jump(twoLegs, { seed: 4030 })), (lines) =>
        lines.map((line, index) =>
          index === 5700 ? replaceForce(line, "NaN") : index === 5800 ? replaceForce(line, "") : line,
        ),
      ),
    ),
    both(
      "time-uneven.csv",
      "time-uneven",
      "warning",
      "time stamps wander by up to 0.2 ms about even steps",
      unevenTime(written(jump(twoLegs, { seed: 4032 }))),
    ),
    both(
      "plate-offset.csv",
      "plate-offset",
      "warning",
      "the left plate reads 25 N while it is empty; the empty plate is recorded before the athlete steps on",
      written(jump(twoLegs, { seed: 4034, emptySecondsBefore: 1, plateOffsetsNewtons: [25, 0] })),
    ),
    both(
      "not-data.csv",
      "not-data",
      "refusal",
      "a letter instead of numbers",
      "Dear colleague,\n\nthe recordings of yesterday are on the other computer.\nThey will follow on Monday.\n",
    ),
    both("empty.csv", "empty", "refusal", "nothing at all", ""),
    ...makeDoubtfulBattery(),
  ];
}

/** The `session.json` of the doubtful files: everything is stated that their one fault leaves to state. */
export function describeDoubtful(files: readonly DoubtfulFile[]): SessionDescription {
  return {
    athlete: { code: "GH-00", name: "nobody" },
    involved: "none",
    date: "2026-11-23",
    milestone: "deliberately doubtful recordings",
    massKg,
    plates: [
      { column: "left", foot: "left" },
      { column: "right", foot: "right" },
    ],
    simulated: true,
    note: "Each file has one fault; README.md in the folder above says which.",
    files: files.map(({ file, said }): FileEntry => ({ file, ...said })),
  };
}

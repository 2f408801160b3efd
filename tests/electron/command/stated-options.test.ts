import { describe, expect, test } from "vitest";
import { parseArguments } from "../../../electron/command/parse-arguments.ts";
import { readStatedOptions, type StatingOptions } from "../../../electron/command/stated-options.ts";
import { UsageError } from "../../../electron/command/usage-error.ts";

const problemOf = (options: StatingOptions): string => {
  try {
    readStatedOptions(options);
  } catch (error) {
    if (error instanceof UsageError) return error.message;
    throw error;
  }
  return "";
};

describe("options that state something", () => {
  test("nothing stated is nothing, and every option finds its place", () => {
    expect(readStatedOptions({})).toEqual({});
    expect(
      readStatedOptions({
        test: "countermovementJump",
        limb: "both",
        involved: "none",
        rate: "600",
        unit: "kgf",
        columns: "time=1,left=2,right=Force R",
        mass: "68.5",
        keep: "left-1.csv",
        "drop-height": "0.30",
        "leading-leg": "left",
        gravity: "9.82",
      }),
    ).toEqual({
      test: "countermovementJump",
      limb: "both",
      involved: "none",
      layout: { rateHz: 600, unit: "kgf", time: 1, left: 2, right: "Force R", platesStated: true },
      massKg: 68.5,
      keep: [{ file: "left-1.csv" }],
      dropHeightMetres: 0.3,
      leadingLeg: "left",
      gravity: 9.82,
    });
  });

  test("a total column states no foot", () => {
    expect(readStatedOptions({ columns: "total=2" })).toEqual({ layout: { total: 2 } });
  });

  test("gravity follows from latitude and altitude", () => {
    // Normal gravity at the pole, WGS 84 (NGA.STND.0036): 9.8321849379 m/s²; within the rounding of its constants.
    const toleranceDigits = 8;
    expect(readStatedOptions({ latitude: "90" }).gravity).toBeCloseTo(9.8321849379, toleranceDigits);
    expect(readStatedOptions({ latitude: "-90" }).gravity).toBe(readStatedOptions({ latitude: "90" }).gravity);
    // Free-air decrease, 3.086e-6 m/s² a metre, over 1000 m.
    expect(readStatedOptions({ latitude: "90", altitude: "1000" }).gravity).toBeCloseTo(
      9.8321849379 - 0.003086,
      toleranceDigits,
    );
  });

  test.each([
    [{ rate: "fast" }, '--rate must be a number in Hz with a decimal point, not "fast".'],
    [{ rate: "1000,5" }, '--rate must be a number in Hz with a decimal point, not "1000,5".'],
    [{ rate: "0" }, "--rate must lie between 1 and 1000000 Hz, not 0."],
    [{ "drop-height": "30" }, "--drop-height must lie between 0.01 and 2 m, not 30."],
    [{ "leading-leg": "both" }, '--leading-leg must be one of left, right, not "both".'],
    [{ rate: "Infinity" }, '--rate must be a number in Hz with a decimal point, not "Infinity".'],
    [{ unit: "V" }, '--unit must be one of N, kN, kgf, lbf, not "V".'],
    [{ limb: "arm" }, '--limb must be one of both, left, right, not "arm".'],
    [
      { test: "hop" },
      '--test must be one of countermovementJump, countermovementJumpArmSwing, squatJump, dropJump, repeatedHops, dropLanding, not "hop".',
    ],
    [{ involved: "yes" }, '--involved must be one of left, right, both, none, not "yes".'],
    [{ mass: "685" }, "--mass must lie between 25 and 250 kg, not 685."],
    [{ gravity: "981" }, "--gravity must lie between 9.7 and 9.9 m/s2, not 981."],
    [{ latitude: "91" }, "--latitude must lie between -90 and 90 degrees, not 91."],
    [{ latitude: "60", altitude: "90000" }, "--altitude must lie between -500 and 9000 m, not 90000."],
    [{ altitude: "100" }, "--altitude needs --latitude beside it."],
    [
      { gravity: "9.8", latitude: "60" },
      "--gravity and --latitude with --altitude exclude each other; give one of them.",
    ],
    [{ columns: "2" }, '--columns is written like time=1,left=2,right=3 (or total=2); "2" is not.'],
    [{ columns: "links=2" }, '--columns is written like time=1,left=2,right=3 (or total=2); "links=2" is not.'],
    [{ columns: "left=0" }, "--columns counts columns from 1; there is no column 0."],
    [{ columns: "left=2,left=3" }, "--columns names left twice."],
    [{ columns: "left=2,right=2" }, "--columns gives one column two meanings."],
  ] as const)("%o is answered by one sentence that names the option", (options, sentence) => {
    expect(problemOf(options)).toBe(sentence);
  });
});

describe("options that answer for the reading", () => {
  test("sums of columns, no time column, swapped plates, an even time base and the decimal mark find their place", () => {
    expect(
      readStatedOptions({ columns: "time=none,left=2+3,right=4", "swap-plates": "yes", "decimal-mark": "comma" })
        .layout,
    ).toEqual({ time: "none", left: "2+3", right: 4, platesStated: true, swapPlates: true, decimalMark: "comma" });
    expect(readStatedOptions({ resample: "yes" }).layout).toEqual({ resample: true });
    expect(readStatedOptions({ resample: "500" }).layout).toEqual({ resample: true, resampleHz: 500 });
    expect(problemOf({ "decimal-mark": "dot" })).toContain("--decimal-mark must be one of point, comma");
  });

  test("may stand without a value, and then take nothing of what follows", () => {
    const names = ["swap-plates", "resample"] as const;
    expect(parseArguments(["--swap-plates", "a.csv", "--resample", "b.csv"], names)).toEqual({
      options: { "swap-plates": "yes", resample: "yes" },
      positionals: ["a.csv", "b.csv"],
    });
    expect(parseArguments(["--resample", "500", "a.csv"], names)).toEqual({
      options: { resample: "500" },
      positionals: ["a.csv"],
    });
    expect(parseArguments(["--", "--resample"], names)).toEqual({ options: {}, positionals: ["--resample"] });
  });
});

describe("taking arguments apart", () => {
  const names = ["rate", "latitude", "out"] as const;

  test("options may stand anywhere, with or without an equals sign, also with a minus sign behind", () => {
    expect(parseArguments(["a.csv", "--latitude", "-33.9", "b.csv", "--rate=600"], names)).toEqual({
      options: { latitude: "-33.9", rate: "600" },
      positionals: ["a.csv", "b.csv"],
    });
  });

  test("after two dashes everything is a name", () => {
    expect(parseArguments(["--", "--rate", "-x.csv"], names)).toEqual({
      options: {},
      positionals: ["--rate", "-x.csv"],
    });
  });

  test.each([
    [["--speed", "3"], "There is no option --speed; --help lists them."],
    [["-r", "3"], "There is no option -r; --help lists them."],
    [["--constructor"], "There is no option --constructor; --help lists them."],
    [["--rate"], "--rate needs a value."],
    [["--rate="], "--rate needs a value."],
    [["--rate", "--out", "x"], "--rate needs a value, but --out follows."],
    [["--rate", "1", "--rate", "2"], "--rate is given 2 times; once is meant."],
  ] as const)("%o is refused", (typed, sentence) => {
    expect(() => parseArguments(typed, names)).toThrow(new UsageError(sentence));
  });
});

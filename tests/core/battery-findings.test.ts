import { describe, expect, test } from "vitest";
import type { Limb, Side } from "../../core/ground/limb.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { analyzeRecording } from "../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import { addSpikes } from "../../core/simulate/recording-faults.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../core/simulate/squat-jump.ts";
import { told } from "../told.ts";
import { asRecording, measured } from "./simulated/simulated-trial.ts";

// For each finding one simulated trial that has it and one near it that has not.
const athlete = { seed: 4, rateHz: 1000, massKg: 70, limb: "both", plates: "two" } as const;
const drop = { ...athlete, boxHeightMetres: 0.3, jumpHeightMetres: 0.24, contactSeconds: 0.22 } as const;
const squat = { ...athlete, jumpHeightMetres: 0.3 } as const;

function trialOf(simulated: SimulatedRecording, kind: TestKind, limb: Limb = "both", massKg?: number): TrialResult {
  const statement = { test: kind, limb, ...(massKg === undefined ? {} : { massKg }) };
  return analyzeRecording(asRecording(simulated), statement, defaultSettings)[0]!.result;
}

function codes(trial: TrialResult): readonly string[] {
  return trial.findings.map((each) => each.code);
}

describe("a drop jump", () => {
  test("with a contact above 250 ms is slow stretch-shortening on two legs, and not on one", () => {
    const slow = { ...drop, contactSeconds: 0.256 };
    expect(codes(trialOf(simulateDropJump(slow), "dropJump"))).toContain("slow-contact");
    expect(codes(trialOf(simulateDropJump({ ...drop, contactSeconds: 0.244 }), "dropJump"))).not.toContain(
      "slow-contact",
    );
    const single = simulateDropJump({ ...slow, limb: "left", jumpHeightMetres: 0.13 });
    expect(codes(trialOf(single, "dropJump", "left"))).not.toContain("slow-contact");
  });

  test("on two plates asks for the leading leg where nobody stated it; on one plate there is nothing to compare", () => {
    expect(codes(trialOf(simulateDropJump(drop), "dropJump"))).toContain("leading-leg-missing");
    const onePlate = trialOf(simulateDropJump({ ...drop, plates: "one" }), "dropJump");
    expect(codes(onePlate)).not.toContain("leading-leg-missing");
  });

  test("without standing after it takes its velocity from the flight, gives no height by impulse, and says so", () => {
    const short = simulateDropJump({ ...drop, endsAfterTouchdownSeconds: 0.4 });
    const trial = trialOf(short, "dropJump", "both", 70);
    expect(trial.weight?.from).toBe("entered mass");
    expect(trial.status).toBe("partial");
    const said = trial.findings.find((each) => each.code === "velocity-from-flight");
    expect(said?.removes).toEqual([
      "takeoffVelocity",
      "jumpHeightImpulse",
      "jumpHeightFromStanding",
      "dropHeightDifference",
    ]);
    // A landing 1 cm lower lengthens the flight: 0.022 m/s at take-off, so 2 % of the drop (by hand).
    const drops = measured(trial, "dropHeightEffective") / short.truth.dropHeightEffectiveMetres - 1;
    expect(Math.abs(drops)).toBeLessThan(0.03);
    expect(measured(trial, "dropHeightByFlightTime")).toBeCloseTo(measured(trial, "dropHeightEffective"), 12);
    const whole = trialOf(simulateDropJump(drop), "dropJump");
    expect(codes(whole)).not.toContain("velocity-from-flight");
  });

  test("whose other foot lands well before the stated leading leg contradicts the statement, with both facts", () => {
    const led = (leadingFirstSeconds: number, stated: Side): TrialResult => {
      const simulated = simulateDropJump({ ...drop, leadingLeg: "left", leadingFirstSeconds });
      const statement = { test: "dropJump", limb: "both", leadingLeg: stated } as const;
      return analyzeRecording(asRecording(simulated), statement, defaultSettings)[0]!.result;
    };
    const contradicted = led(0.012, "right").findings.find((each) => each.code === "leading-leg-contradicted");
    expect(told(contradicted)?.message).toMatch(
      /^The right leg is stated to lead, but the plate called the left foot's is met 1[12]\.\d ms before the other/,
    );
    expect(codes(led(0.012, "left"))).not.toContain("leading-leg-contradicted");
    // Feet that land 2 ms apart tell nothing.
    expect(codes(led(0.002, "right"))).not.toContain("leading-leg-contradicted");
  });

  test("of unknown weight keeps what flight and contact tell, and says what to give for the rest", () => {
    const short = simulateDropJump({ ...drop, endsAfterTouchdownSeconds: 0.4 });
    const trial = trialOf(short, "dropJump");
    expect(trial.status).toBe("partial");
    expect(trial.weight).toBeUndefined();
    expect(trial.measures.map((each) => each.id)).toContain("reactiveStrengthIndex");
    const cause = trial.findings.find((each) => each.code === "no-quiet-standing");
    expect(told(cause)?.action).toContain("give the body mass");
    expect(cause?.removes).toContain("bodyWeight");
    expect(cause?.removes).toContain("jumpHeightImpulse");
  });

  test("on one leg is not weighed with the other foot down, unless that weight is borne out", () => {
    const single = { ...drop, limb: "left", jumpHeightMetres: 0.13, contactSeconds: 0.32 } as const;
    const both = trialOf(simulateDropJump({ ...single, standsOnBothAfterLanding: true }), "dropJump", "left");
    expect(both.status).toBe("partial");
    expect(both.weight).toBeUndefined();
    expect(codes(both)).toContain("other-foot-touching");
    const alone = trialOf(simulateDropJump(single), "dropJump", "left");
    expect(alone.weight?.from).toBe("quiet standing after the landing");
  });
});

describe("a landing without an end", () => {
  const jump = { ...athlete, jumpHeightMetres: 0.3, plates: "one" } as const;
  const saidOf = (trial: TrialResult) => trial.findings.filter((each) => each.removes.includes("landingImpulse"));

  test("is laid to the range of the plate where force is missing, however long the recording is", () => {
    const trial = trialOf(simulateCountermovementJump({ ...jump, clipNewtons: 1750 }), "countermovementJump");
    expect(trial.events.some((each) => each.name === "landingEnd")).toBe(false);
    expect(codes(trial)).not.toContain("landing-short");
    expect(
      saidOf(trial)
        .map((each) => told(each).message)
        .join(" "),
    ).toContain("Force beyond the plate's range is missing");
  });

  test("is laid to the recording where that ends in the landing", () => {
    const short = simulateCountermovementJump({ ...jump, endsAfterTouchdownSeconds: 0.1 });
    const trial = trialOf(short, "countermovementJump");
    expect(saidOf(trial).map((each) => each.code)).toEqual(["landing-short"]);
    expect(told(saidOf(trial)[0])?.message).toMatch(/^The recording ends 0\.1\d? s after touchdown/);
  });
});

describe("a squat jump", () => {
  test("with a dip of more than 5 % of body weight has a countermovement; one of 3 % has none", () => {
    const dipping = (weightFraction: number) =>
      trialOf(simulateSquatJump({ ...squat, dip: { weightFraction, seconds: 0.2 } }), "squatJump");
    expect(codes(dipping(0.08))).toContain("dip-in-squat-jump");
    expect(codes(dipping(0.03))).not.toContain("dip-in-squat-jump");
  });

  test("may begin in its hold", () => {
    const simulated = simulateSquatJump({ ...squat, startsInHold: true });
    const trial = trialOf(simulated, "squatJump");
    expect(trial.status).toBe("analysed");
    // Half a sample of take-off is 5 mm/s.
    expect(Math.abs(measured(trial, "takeoffVelocity") - simulated.truth.takeoffVelocity)).toBeLessThan(0.005);
  });
});

describe("repeated hops", () => {
  const bout = (count: number, contactSeconds: number) =>
    simulateHops({
      ...athlete,
      entryHeightMetres: 0.2,
      hops: Array.from({ length: count }, () => ({ contactSeconds, jumpHeightMetres: 0.2 })),
    });

  test("of which fewer than five are quick are flagged and use what there is", () => {
    const few = trialOf(bout(4, 0.2), "repeatedHops");
    expect(codes(few)).toContain("hops-few");
    expect(measured(few, "hopsUsed")).toBe(4);
    const enough = trialOf(bout(5, 0.2), "repeatedHops");
    expect(codes(enough)).not.toContain("hops-few");
    expect(measured(enough, "hopsUsed")).toBe(5);
  });

  test("that are all slow have no mean, and the finding names it", () => {
    const slow = trialOf(bout(6, 0.27), "repeatedHops");
    expect(measured(slow, "hopsFound")).toBe(6);
    expect(measured(slow, "hopsUsed")).toBe(0);
    expect(slow.measures.some((each) => each.id === "reactiveStrengthIndexBestFive")).toBe(false);
    expect(slow.findings.find((each) => each.code === "hops-few")?.removes).toEqual([
      "reactiveStrengthIndexBestFive",
      "hopStiffness",
    ]);
  });

  test("carry a table with every hop and which of them are used", () => {
    const trial = trialOf(bout(7, 0.2), "repeatedHops");
    expect(trial.hops).toHaveLength(7);
    expect(trial.hops?.filter((hop) => hop.used)).toHaveLength(5);
    const mean = trial.hops!.filter((hop) => hop.used).reduce((sum, hop) => sum + hop.reactiveStrengthIndex / 5, 0);
    expect(measured(trial, "reactiveStrengthIndexBestFive")).toBeCloseTo(mean, 12);
  });
});

describe("two-leg hops on two plates", () => {
  const [leaves, lands] = [0.008, 0.003];
  const hops = Array.from({ length: 6 }, () => ({ contactSeconds: 0.22, jumpHeightMetres: 0.2 }));
  const bout = {
    ...athlete,
    entryHeightMetres: 0.2,
    hops,
    limbTakeoffDifferenceSeconds: leaves,
    limbTouchdownDifferenceSeconds: lands,
  };
  const trial = trialOf(simulateHops(bout), "repeatedHops");

  test("give each limb a touchdown and a take-off in every contact, numbered like those of the body", () => {
    const named = (side: Side | undefined): readonly string[] =>
      trial.events
        .filter((each) => each.side === side)
        .map(({ name, contactIndex }) => `${name} ${contactIndex ?? "of the entry"}`);
    expect(named("left")).toEqual(named(undefined));
    expect(named("right")).toEqual(named(undefined));
    expect(named("left")).toHaveLength(14);
  });

  test("tell how long each limb stood: the right, which lands 3 ms later and leaves 8 ms later, 5 ms longer", () => {
    expect(trial.hops).toHaveLength(6);
    for (const { limbs, contactTime } of trial.hops!) {
      expect(limbs?.map((limb) => limb.side)).toEqual(["left", "right"]);
      const [left, right] = limbs!.map((limb) => limb.contactTime);
      // A sample at either end of either contact.
      expect(Math.abs(right! - left! - (leaves - lands))).toBeLessThan(0.002);
      expect(left).toBeLessThan(contactTime);
    }
  });

  test("on one plate tell nothing of the limbs", () => {
    const one = trialOf(simulateHops({ ...bout, plates: "one" }), "repeatedHops");
    expect(one.hops).toHaveLength(6);
    expect(one.hops?.some((hop) => hop.limbs !== undefined)).toBe(false);
    expect(one.events.some((each) => each.side !== undefined)).toBe(false);
  });
});

describe("a plate that reads something while empty", () => {
  test("says how much was taken off it, also where that is too little for a warning", () => {
    const trial = trialOf(simulateDropJump({ ...drop, plateOffsetsNewtons: [7, -4] }), "dropJump");
    expect(codes(trial)).not.toContain("plate-offset");
    // The mean of at least half a second of an empty plate with the simulator's noise.
    const zeros = trial.plates.map((plate) => plate.zeroNewtons);
    expect(zeros[0]).toBeCloseTo(7, 0);
    expect(zeros[1]).toBeCloseTo(-4, 0);
  });

  test("says nothing where the empty plate reads nothing", () => {
    const trial = trialOf(simulateDropJump({ ...drop, plateNoiseNewtons: 0 }), "dropJump");
    expect(trial.plates.map((plate) => "zeroNewtons" in plate)).toEqual([false, false]);
  });
});

describe("a recording", () => {
  test("with a sample that stands alone is warned of; a small one is not", () => {
    const clean = simulateDropJump(drop);
    const spiked = (newtons: number) => trialOf(addSpikes(clean, 0, [{ at: 1.3, newtons }]), "dropJump");
    expect(codes(spiked(500))).toContain("spikes");
    expect(codes(spiked(30))).not.toContain("spikes");
  });

  test("of a noisy plate has wider contact events and says so", () => {
    const quiet = trialOf(simulateDropJump({ ...drop, plateNoiseNewtons: 1.5 }), "dropJump");
    const noisy = trialOf(simulateDropJump({ ...drop, plateNoiseNewtons: 8 }), "dropJump");
    expect(codes(quiet)).not.toContain("plate-noisy");
    expect(codes(noisy)).toContain("plate-noisy");
    const takeoff = (trial: TrialResult) => trial.events.find((each) => each.name === "takeoff")!.uncertainty!;
    expect(takeoff(noisy)).toBeGreaterThan(takeoff(quiet));
  });
});

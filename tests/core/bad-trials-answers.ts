import type { FindingCode } from "../../core/ground/finding-codes.ts";

/**
 * What the program is to say about each kind of bad trial: any one of these codes tells the reader the true cause. A
 * kind that is no fault of its trials, only of what was thought to be in the file, says into how many trials it is cut.
 */
export type RightAnswer = { readonly codes: readonly FindingCode[] } | { readonly trials: number };

const says = (...codes: readonly FindingCode[]): RightAnswer => ({ codes });

export const rightAnswers: Readonly<Record<string, RightAnswer>> = {
  // What the athlete did, or somebody said.
  "jumps-without-standing": says("weighing-short", "several-flights"),
  "two-jumps": { trials: 2 },
  "broken-off": says("broken-off"),
  "standing-called-drop-jump": says("no-takeoff"),
  "standing-called-jump": says("no-takeoff"),
  "step-down-called-drop-jump": says("test-contradicts"),
  "jump-called-drop-jump": says("test-contradicts"),
  "drop-jump-called-jump": says("test-contradicts"),
  "jump-called-squat-jump": says("dip-in-squat-jump"),
  "dip-in-squat-jump": says("dip-in-squat-jump"),
  "jump-called-hops": says("test-contradicts"),
  "hops-few": says("hops-few"),
  "hops-slow": says("hops-few"),
  "leg-swing": says("leg-swing"),
  "leg-swing-in-dip": says("leg-swing"),
  "other-foot-pushes": says("other-foot-touching"),
  "other-foot-in-contact": says("other-foot-touching"),
  "wrong-limb": says("plates-contradict"),
  "two-legs-called-one": says("test-contradicts"),
  "somebody-steps-on": says("load-changes"),
  "starts-moving": says("starts-moving"),
  "weighing-short": says("weighing-short"),
  "lands-beside-plates": says("landing-off-plate"),
  "drop-jump-lands-beside-plates": says("landing-off-plate"),
  "landing-cut": says("landing-short"),
  "heights-differ": says("heights-differ"),
  "drop-height-off": says("drop-height-off"),
  "slow-contact": says("slow-contact"),
  "leading-leg-missing": says("leading-leg-missing"),
  // A hand on a rail makes the weight too small against the standing after the landing, which the flight bears out.
  rail: says("held-while-weighed"),
  // Without standing after the landing only the flight contradicts it.
  "rail-without-landing": says("heights-contradict"),
  // What plates, cables, programs and exports did.
  "sign-turned-in-mid-file": says("sign-changes"),
  "sign-turned-after-landing": says("sign-changes"),
  spikes: says("spikes"),
  "spikes-in-drop-contact": says("spikes"),
  "dead-plate": says("plate-dead"),
  "plate-dies": says("plate-dead"),
  "plate-dies-in-drop-jump": says("plate-dead"),
  "gap-in-push": says("gap"),
  "gap-in-contact": says("gap"),
  "samples-lost-as-zero": says("samples-lost"),
  "samples-held": says("samples-held"),
  "cells-not-numbers": says("cells-unreadable"),
  volts: says("unit-not-stated"),
  // The header says newtons, and no person weighs what then stands on the plates.
  "volts-called-newtons": says("unit-contradicts", "weight-implausible"),
  "kilonewtons-called-newtons": says("unit-contradicts", "weight-implausible"),
  "rates-conflict": says("rate-contradicts"),
  "time-turns-back": says("time-uneven"),
  "other-recording-appended": says("several-athletes"),
  "rate-100": says("rate-low"),
  "rate-raised-by-repeating": says("rate-not-real"),
  smoothed: says("smoothed"),
  clipped: says("clipped"),
  "range-exceeded-beneath-noise": says("clipped"),
  "one-plate-turned": says("plate-turned"),
  "two-athletes-in-one-file": says("several-athletes"),
  "plate-drops-out": says("samples-lost"),
  offset: says("plate-offset"),
  drift: says("plate-drift"),
  // The zero is another one in the flight than in the standing, and so is the standing load.
  "zeroed-in-mid-file": says("load-changes", "plate-offset"),
  "gain-differs": says("weight-differs"),
  "plates-mixed": says("other-foot-touching"),
  "plates-exchanged-in-mid-file": says("landing-other-plate"),
  hum: says("plate-noisy"),
  noise: says("plate-noisy"),
  // Single samples that stand alone, or a plate that is restless while nobody is on it: a disturbance either way.
  "noise-in-flight": says("spikes", "plate-noisy"),
  "last-line-cut": says("truncated"),
  "empty-plates": says("no-quiet-standing"),
};

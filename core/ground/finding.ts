/** How much a finding weighs: a note informs, a warning asks for eyes, a refusal means no measure could be made. */
export type Severity = "note" | "warning" | "refusal";

/** Stable public codes (METHODS §7). A code never changes its meaning; new ones may join in the same style. */
export const findingCodes = [
  "weighing-short",
  "weighing-restless",
  "weight-differs",
  "weight-implausible",
  "load-changes",
  "plate-offset",
  "plate-drift",
  "plate-noisy",
  "plate-dead",
  "plate-turned",
  "held-while-weighed",
  "heights-contradict",
  "several-athletes",
  "plates-equal",
  "plates-disagree",
  "another-athlete",
  "mass-changed",
  "clipped",
  "rate-low",
  "rate-missing",
  "rate-contradicts",
  "rate-not-real",
  "time-uneven",
  "time-left-out",
  "resampled",
  "gap",
  "spikes",
  "samples-lost",
  "samples-held",
  "smoothed",
  "cells-unreadable",
  "columns-unclear",
  "decimal-mark-unclear",
  "decimal-marks-differ",
  "rows-contradict",
  "columns-disagree",
  "plates-summed",
  "plates-swapped",
  "encoding-guessed",
  "lines-skipped",
  "plate-derived",
  "unit-contradicts",
  "unit-from-mass",
  "mass-missing",
  "sign-turned",
  "sign-changes",
  "unit-not-stated",
  "no-takeoff",
  "no-landing",
  "broken-off",
  "no-quiet-standing",
  "several-flights",
  "bounce-after-landing",
  "landing-off-plate",
  "landing-other-plate",
  "landing-short",
  "landing-restless",
  "no-first-peak",
  "first-peaks-differ",
  "starts-moving",
  "heights-differ",
  "velocity-from-flight",
  "dip-in-squat-jump",
  "slow-contact",
  "drop-height-off",
  "drop-height-not-stated",
  "leading-leg-missing",
  "leading-leg-contradicted",
  "hops-few",
  "drop-height-legs-differ",
  "other-foot-touching",
  "leg-swing",
  "limb-not-stated",
  "test-not-stated",
  "test-from-name",
  "test-contradicts",
  "test-not-available",
  "plates-unproved",
  "plates-contradict",
  "one-leg-standing",
  "event-moved",
  "event-not-found",
  "measure-not-made",
  "self-check-broken",
  "recording-repeated",
  "truncated",
  "unreadable",
  "empty",
  "not-data",
  "parts-contradict",
  "parameters-damaged",
  "scaling-assumed",
  "no-force-platform",
  "platform-unreadable",
  "platform-tilted",
  "platforms-left-out",
  "session-unreadable",
  "session-entry-unused",
  "layout-unclear",
  "layout-unreadable",
] as const;

export type FindingCode = (typeof findingCodes)[number];

/**
 * Something a person should know about a recording, a trial or a session. Bad input becomes a finding, never an
 * exception: an exception is our own mistake.
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** One plain sentence: what was seen, with the figures. */
  readonly message: string;
  /** The place in words: "line 812", "2.31 s to 2.44 s", "plate left"; empty when it concerns the whole. */
  readonly where: string;
  /** Identifiers of the measures that could not be made because of it. */
  readonly removes: readonly string[];
  /** What to do about it, one plain sentence. */
  readonly action: string;
}

/** Makes a finding with its optional parts filled in. */
export function finding(
  code: FindingCode,
  severity: Severity,
  message: string,
  action: string,
  optional: { readonly where?: string; readonly removes?: readonly string[] } = {},
): Finding {
  return { code, severity, message, where: optional.where ?? "", removes: optional.removes ?? [], action };
}

/** True when any of the findings refuses. */
export function isRefused(findings: readonly Finding[]): boolean {
  return findings.some((each) => each.severity === "refusal");
}

import { describe, expect, it } from "vitest";
import { proseFinding } from "../../core/ground/finding.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { recognitionOffer } from "../../renderer/shell/recognition.ts";
import { exampleTrial } from "./example-session.ts";

const asks = proseFinding("test-not-stated", "refusal", "Nothing says which jump test this is.", "Choose the test.");
const drop = {
  test: "dropJump",
  trace: { seen: "contact", before: "empty plate", contactSeconds: 0.21, flightSeconds: 0.52 },
} as const;
const hops = { test: "repeatedHops", trace: { seen: "flights", before: "standing on the plate", flights: 9 } } as const;

const unknown = (file: string, recognised: TrialResult["recognised"], trial = 1): TrialResult => ({
  ...exampleTrial({ file, trial, status: "refused", findings: [asks] }),
  ...(recognised === undefined ? {} : { recognised }),
});

describe("what a trace looks like", () => {
  it("is offered with its reason, together with the other files that look the same", () => {
    const trials = [unknown("a", drop), unknown("b", hops), unknown("c", drop), exampleTrial({ file: "d" })];
    expect(recognitionOffer(trials, "a")).toEqual({ ...drop, others: ["c"] });
    expect(recognitionOffer(trials, "b")).toEqual({ ...hops, others: [] });
  });

  it("is not offered where the test is known, even if the trace looks like another", () => {
    expect(recognitionOffer([{ ...exampleTrial({ file: "a" }), recognised: drop }], "a")).toBeUndefined();
  });

  it("is not offered for a file whose trials look like several tests", () => {
    expect(recognitionOffer([unknown("a", drop), unknown("a", hops, 2)], "a")).toBeUndefined();
  });
});

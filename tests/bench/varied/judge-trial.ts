import type { Finding } from "../../../core/ground/finding.ts";
import { isRefused } from "../../../core/ground/finding.ts";
import type { Measure } from "../../../core/measures/measure.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { draftTrials } from "../../../core/session/draft-trials.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { english } from "../../../core/words/english.ts";
import { asRecording } from "../../core/simulated/simulated-trial.ts";
import { told } from "../../told.ts";
import type { VariedTrial } from "./draw-trial.ts";
import type { TrueValue } from "./true-values.ts";
import { warnsOf } from "./warned-measures.ts";

/** A measure beyond three of its standard uncertainties from the truth. */
export interface WrongMeasure {
  readonly id: string;
  readonly side: string;
  /** In standard uncertainties. Infinite for a count that is not the true one. */
  readonly error: number;
  readonly value: number;
  readonly truth: number;
  /** True when a warning on the trial concerns it. */
  readonly warned: boolean;
}

/** What became of a trial whose test and limb were stated, and of the same trace where nobody stated anything. */
export interface Verdict {
  readonly outcome: "analysed" | "warned" | "refused";
  /** Codes of its warnings or refusals. */
  readonly codes: readonly string[];
  readonly messages: readonly string[];
  /** What was recognised instead, or why nothing was; absent where the test and limb were recognised. */
  readonly misread?: string;
  readonly compared: number;
  /** Published measures that have no truth here, or no uncertainty though they are no count. */
  readonly unjudged: readonly string[];
  readonly wrong: readonly WrongMeasure[];
  /** Every compared error in standard uncertainties, by measure. */
  readonly errors: readonly { readonly id: string; readonly error: number }[];
}

const limitInUncertainties = 3;
const counts = new Set(["hopsFound", "hopsUsed"]);

/** Analyses a trial with its test and limb stated, compares it with the truth, and asks what the trace alone says. */
export function judgeTrial(trial: VariedTrial): Verdict {
  const recording = asRecording(trial.recording);
  const analysed = analyzeRecording(recording, { test: trial.test, limb: trial.limb }, defaultSettings);
  const [only] = analysed;
  const misread = misreadingOf(trial);
  const read = misread === undefined ? {} : { misread };
  if (only === undefined || analysed.length !== 1 || only.result.status === "refused") {
    const findings = analysed.flatMap(({ result }) => result.findings.filter((each) => each.severity === "refusal"));
    return {
      ...read,
      outcome: "refused",
      codes: analysed.length === 1 ? codesOf(findings) : [`${analysed.length} trials`],
      messages: findings.map((each) => told(each).message),
      compared: 0,
      unjudged: [],
      wrong: [],
      errors: [],
    };
  }
  const { findings, measures } = only.result;
  const warnings = findings.filter((each) => each.severity === "warning");
  const compared = measures.flatMap((measure) => {
    const truth = truthOf(trial.truths, measure);
    if (truth === undefined) return [];
    const error = errorOf(measure, truth);
    return error === undefined ? [] : [{ measure, truth, error }];
  });
  return {
    ...read,
    outcome: warnings.length > 0 ? "warned" : "analysed",
    codes: codesOf(warnings),
    messages: warnings.map((each) => told(each).message),
    compared: compared.length,
    unjudged: measures.filter((each) => !compared.some(({ measure }) => measure === each)).map((each) => each.id),
    wrong: compared.flatMap(({ measure, truth, error }) =>
      Math.abs(error) > limitInUncertainties
        ? [
            {
              id: measure.id,
              side: english.limbs.bearer(measure),
              error,
              value: measure.value,
              truth,
              warned: warnings.some((warning) => warnsOf(warning.code, measure.id)),
            },
          ]
        : [],
    ),
    errors: compared.map(({ measure, error }) => ({ id: measure.id, error })),
  };
}

function codesOf(findings: readonly Finding[]): readonly string[] {
  return [...new Set(findings.map((each) => each.code))];
}

function errorOf(measure: Measure, truth: number): number | undefined {
  const error = measure.value - truth;
  if (counts.has(measure.id)) return error === 0 ? 0 : Number.POSITIVE_INFINITY;
  return measure.uncertainty === undefined ? undefined : error / measure.uncertainty;
}

/** A body-size form's truth is its measure's over the true mass or weight. */
function truthOf(truths: readonly TrueValue[], { id, side }: Measure): number | undefined {
  const find = (wanted: string): number | undefined =>
    truths.find((each) => each.id === wanted && (each.side === side || wanted.startsWith("body")))?.value;
  const own = find(id);
  if (own !== undefined) return own;
  const [base, form] = id.split("PerBody");
  const whole = base === undefined ? undefined : find(base);
  const size = form === "Mass" ? find("bodyMass") : form === "Weight" ? find("bodyWeight") : undefined;
  return whole === undefined || size === undefined ? undefined : whole / size;
}

/** What the trace alone is read as, where that is not what was done. */
function misreadingOf(trial: VariedTrial): string | undefined {
  const file = { path: "recording", bytes: new Uint8Array(0), sha256: "" };
  const input = { folder: "", files: [], unreadable: [], description: {}, descriptionFindings: [], stated: {} };
  const drafts = draftTrials({ file, recording: asRecording(trial.recording), findings: [] }, input, defaultSettings);
  const [draft] = drafts;
  if (draft === undefined || drafts.length !== 1) return `${drafts.length} trials`;
  const { recognised, limb } = draft;
  if (recognised === undefined) {
    return `nothing: ${draft.findings.filter((each) => isRefused([each])).map((each) => each.code)}`;
  }
  if (recognised.test !== trial.test) return `${recognised.test}: ${english.recognition(recognised)}`;
  return trial.plates === "two" && limb !== trial.limb ? `limb ${limb ?? "not found"}` : undefined;
}

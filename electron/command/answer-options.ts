import type { Answer, StatementName, Statements } from "../../core/ground/answer.ts";

type Options = { readonly [Name in StatementName]: (value: Statements[Name]) => string };

/** Each statement as an option with its value; "" for what no option states. */
const optionOf: Options = {
  test: (value) => `--test ${value}`,
  limb: (value) => `--limb ${value}`,
  leadingLeg: (value) => `--leading-leg ${value}`,
  unit: (value) => `--unit ${value}`,
  rateHz: (value) => `--rate ${value}`,
  massKg: (value) => `--mass ${value}`,
  dropHeightMetres: (value) => `--drop-height ${value}`,
  decimalMark: (value) => `--decimal-mark ${value}`,
  columns: (value) => `--columns ${typed(Object.entries(value).map(([role, column]) => `${role}=${column}`))}`,
  swapPlates: () => "--swap-plates",
  resample: () => "--resample",
  resampleHz: (value) => `--resample ${value}`,
  kept: () => "--keep",
  leftOut: () => "",
};

/** The option of a statement whose value only a person knows, as help shows it. */
const askedOption: Readonly<Record<StatementName, string>> = {
  test: "--test TEST",
  limb: "--limb LIMB",
  leadingLeg: "--leading-leg LEG",
  unit: "--unit UNIT",
  rateHz: "--rate HZ",
  massKg: "--mass KG",
  dropHeightMetres: "--drop-height M",
  decimalMark: "--decimal-mark MARK",
  columns: "--columns LIST",
  swapPlates: "--swap-plates",
  resample: "--resample",
  resampleHz: "--resample HZ",
  kept: "--keep FILE",
  leftOut: "",
};

function typed(parts: readonly string[]): string {
  const list = parts.join(",");
  return /[^\w=,.+-]/.test(list) ? `'${list.replaceAll("'", "'\\''")}'` : list;
}

function optionFor(answer: Answer): string {
  if ("asks" in answer) return askedOption[answer.asks];
  return Object.entries(answer)
    .map(([name, value]) => (optionOf[name as StatementName] as (stated: unknown) => string)(value))
    .join(" ");
}

/** The options that state the answers: "(--unit N, --unit kN or --rate HZ)"; "" where none does. */
export function answerOptions(answers: readonly Answer[]): string {
  const options = [...new Set(answers.map(optionFor))].filter((option) => option !== "");
  if (options.length === 0) return "";
  const [last = ""] = options.slice(-1);
  return `(${options.length === 1 ? last : `${options.slice(0, -1).join(", ")} or ${last}`})`;
}

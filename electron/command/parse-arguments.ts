import { parseArgs } from "node:util";
import { UsageError } from "./usage-error.ts";

/** What was typed after a command: options by name, each at most once, and the rest in order. */
export interface ParsedArguments<Name extends string> {
  readonly options: Readonly<Partial<Record<Name, string>>>;
  readonly positionals: readonly string[];
}

/**
 * Takes arguments apart.
 * @throws UsageError for an unknown option, a missing value, or an option given twice.
 */
export function parseArguments<Name extends string>(
  typed: readonly string[],
  names: readonly Name[],
): ParsedArguments<Name> {
  const { values, positionals, tokens } = parseArgs({
    args: withBareValues(typed),
    options: Object.fromEntries(names.map((name) => [name, { type: "string", multiple: true } as const])),
    // Not strict: a value may begin with a minus sign (a southern latitude), and the sentences are our own.
    strict: false,
    tokens: true,
  });
  for (const token of tokens) {
    if (token.kind !== "option") continue;
    if (!(names as readonly string[]).includes(token.name)) {
      throw new UsageError(`There is no option ${token.rawName}; --help lists them.`);
    }
    if (token.value === undefined || token.value === "") throw new UsageError(`${token.rawName} needs a value.`);
    if (!token.inlineValue && token.value.startsWith("--")) {
      throw new UsageError(`${token.rawName} needs a value, but ${token.value} follows.`);
    }
  }
  const options: Partial<Record<Name, string>> = {};
  for (const name of names) {
    const given = values[name];
    if (!Array.isArray(given)) continue;
    if (given.length > 1) throw new UsageError(`--${name} is given ${given.length} times; once is meant.`);
    options[name] = String(given[0]);
  }
  return { options, positionals };
}

/** Options that may stand without a value: what they then mean, and what a value after them looks like. */
const bareOptions: Readonly<Record<string, { readonly means: string; readonly value: RegExp }>> = {
  "--swap-plates": { means: "yes", value: /^(yes|no)$/ },
  "--verify": { means: "yes", value: /^(yes|no)$/ },
  "--resample": { means: "yes", value: /^(yes|no|\d+\.?\d*|\.\d+)$/ },
};

/** Gives an option that stands alone its value, so that a file behind it is not taken for one. */
function withBareValues(typed: readonly string[]): string[] {
  const end = typed.indexOf("--");
  return typed.map((each, index) => {
    const option = end >= 0 && index > end ? undefined : bareOptions[each];
    return option === undefined || option.value.test(typed[index + 1] ?? "") ? each : `${each}=${option.means}`;
  });
}

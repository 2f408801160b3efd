import { layoutLimits } from "../../core/bytes/json-bounds.ts";
import type { Layout } from "../../core/stated/layout.ts";
import { parseLayout } from "../../core/stated/layout-file.ts";
import { english } from "../../core/words/english.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { readUpTo } from "../bounded-json/read-up-to.ts";
import { UsageError } from "./usage-error.ts";

/**
 * The saved layout named by `--layout`; none where the option was not given.
 * @throws UsageError when the file cannot be read or is no layout
 */
export function readLayouts(file: string | undefined): readonly Layout[] {
  if (file === undefined) return [];
  let bytes: Uint8Array;
  try {
    bytes = readUpTo(file, layoutLimits.bytes);
  } catch {
    throw new UsageError(`--layout ${file} cannot be read.`);
  }
  const { layout, findings } = parseLayout(bytes);
  if (layout !== undefined) return [layout];
  throw new UsageError(`--layout ${file}: ${findings.map((each) => findingInWords(each, english).message).join(" ")}`);
}

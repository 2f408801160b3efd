import { readFileSync } from "node:fs";
import type { Layout } from "../../core/recording/layout.ts";
import { parseLayout } from "../../core/recording/layout-file.ts";
import { UsageError } from "./usage-error.ts";

/**
 * The saved layout named by `--layout`; none where the option was not given.
 * @throws UsageError when the file cannot be read or is no layout
 */
export function readLayouts(file: string | undefined): readonly Layout[] {
  if (file === undefined) return [];
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch {
    throw new UsageError(`--layout ${file} cannot be read.`);
  }
  const { layout, findings } = parseLayout(bytes);
  if (layout !== undefined) return [layout];
  throw new UsageError(`--layout ${file}: ${findings.map(({ message }) => message).join(" ")}`);
}

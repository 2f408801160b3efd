import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { countOfParameter, dimensionsOf, numbersOf, textsOf } from "../../bytes/c3d/parameter-values.ts";

/** Something the file says beside its forces, for the person who imports it; nothing is computed from it. */
export interface C3dHint {
  readonly name: string;
  readonly value: string;
}

const subjectKeys = ["SUBJECTS:NAMES", "SUBJECTS:LABEL_PREFIXES", "SUBJECTS:MODELS", "SUBJECT:NAME", "SUBJECT:NUMBER"];

/** Events and subjects as the file names them. */
export function readHints(file: C3dFile): readonly C3dHint[] {
  const { parameters } = file;
  const subjects = subjectKeys.flatMap((key): C3dHint[] => {
    const named = (textsOf(parameters, key) ?? []).filter((text) => text !== "");
    return named.length === 0 ? [] : [{ name: key, value: named.join(", ") }];
  });
  return [...subjects, ...readEvents(file)];
}

/** EVENT:TIMES holds a minute and a second for each event. */
function readEvents({ parameters }: C3dFile): C3dHint[] {
  const times = numbersOf(parameters, "EVENT:TIMES", "signed") ?? [];
  const labels = textsOf(parameters, "EVENT:LABELS") ?? [];
  const contexts = textsOf(parameters, "EVENT:CONTEXTS") ?? [];
  if (dimensionsOf(parameters, "EVENT:TIMES")[0] !== 2) return [];
  const count = Math.min(countOfParameter(parameters, "EVENT:USED") ?? 0, times.length / 2);
  return Array.from({ length: count }, (_, index): C3dHint => {
    const seconds = 60 * times[2 * index]! + times[2 * index + 1]!;
    const context = contexts[index] ?? "";
    return {
      name: "EVENT",
      value: `${labels[index] ?? ""}${context === "" ? "" : ` (${context})`} at ${seconds.toFixed(3)} s`,
    };
  });
}

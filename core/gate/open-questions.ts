import type { Gate } from "./gate.ts";

/** What the cautions still want before the statuses that wait for them: of the first asking, else of the second where it was due. */
export function openQuestions({ answered, closures }: Pick<Gate, "answered" | "closures">): readonly string[] {
  if (answered.openAtFirst.length > 0) return answered.openAtFirst;
  return closures.some(({ code }) => code === "change-not-asked") ? answered.openAtChange : [];
}

import type { StepRequest } from "../boundary/session-requests.ts";
import type { OfferedStep, Workspace } from "../boundary/workspace-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { EditHistory, NumberedStep } from "./edit-history.ts";

/** What undo and redo would do while a session is shown, as every screen shows it. */
export function offeredSteps(
  history: EditHistory,
  shown: string,
): Pick<Workspace, "undo" | "redo" | "undoStep" | "redoStep"> {
  const [undo, redo] = [history.lastDone(shown), history.lastUndone(shown)];
  return {
    undo: undo?.words ?? "",
    redo: redo?.words ?? "",
    ...(undo && { undoStep: offered(undo, history.lastDoneWithin(shown)) }),
    ...(redo && { redoStep: offered(redo, history.lastUndoneWithin(shown)) }),
  };
}

function offered({ number, reach }: NumberedStep, within: NumberedStep | undefined): OfferedStep {
  if ("folder" in reach) return { step: number };
  return {
    step: number,
    beyond: reach.beyond,
    ...(within && { within: { step: within.number, words: within.words } }),
  };
}

/**
 * The step a request means; undefined where there is none to take.
 * @throws RequestRefused where it is not the newest any more, or reaches beyond the session and nobody agreed to that
 */
export function chosenStep(
  history: EditHistory,
  direction: "undo" | "redo",
  { folder, step, agreed = false }: StepRequest & { readonly folder: string },
): NumberedStep | undefined {
  const newest = direction === "undo" ? history.lastDone(folder) : history.lastUndone(folder);
  const within = direction === "undo" ? history.lastDoneWithin(folder) : history.lastUndoneWithin(folder);
  const chosen = step === undefined ? newest : [newest, within].find((each) => each?.number === step);
  if (chosen === undefined) {
    if (step === undefined) return undefined;
    const now = newest === undefined ? "there is nothing left to take" : `the newest step is “${newest.words}”`;
    throw new RequestRefused(`Something was done elsewhere in the meantime: now ${now}. Nothing was changed.`);
  }
  if ("beyond" in chosen.reach && !agreed) {
    throw new RequestRefused(
      `“${chosen.words}” changes more than the session shown (${chosen.reach.beyond}); nothing was changed.`,
    );
  }
  return chosen;
}

import type { Gate } from "./gate.ts";
import { singleLegAndDropLoads, type TestLoad } from "./test-load.ts";

/** One asking of the cautions in a session, and where it stands. */
export interface CautionsDue {
  readonly asking: "session" | "change";
  /** `open`: what is asked lacks answers; `answered`; `not known`: a person stated that it is not. */
  readonly state: "open" | "answered" | "not known";
  /** True where it is open and its tests are next, or were recorded already. */
  readonly isDue: boolean;
}

/**
 * When the cautions are asked: before the session, and what can have changed before the first single-leg or drop test,
 * where the protocol has one or one was recorded.
 * @param planned loads of the protocol's tests
 * @param recorded loads of the trials that are there
 * @param next load of the test that comes next, where that is known
 */
export function cautionsDue(
  { answered }: Pick<Gate, "answered">,
  planned: readonly TestLoad[],
  recorded: readonly (TestLoad | undefined)[],
  next?: TestLoad,
): readonly CautionsDue[] {
  const isHarder = (load: TestLoad | undefined) => load !== undefined && singleLegAndDropLoads.includes(load);
  const stateOf = (open: readonly string[]): CautionsDue["state"] =>
    answered.notKnown !== undefined ? "not known" : open.length > 0 ? "open" : "answered";
  const isNow = recorded.some(isHarder) || isHarder(next);
  const first = stateOf(answered.openAtFirst);
  const change = stateOf(answered.openAtChange);
  return [
    { asking: "session" as const, state: first, isDue: first === "open" },
    ...(planned.some(isHarder) || isNow
      ? [{ asking: "change" as const, state: change, isDue: change === "open" && isNow }]
      : []),
  ];
}

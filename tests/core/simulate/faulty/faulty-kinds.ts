import { faultyMovements } from "./faulty-movements.ts";
import { faultyRecordings } from "./faulty-recordings.ts";
import type { FaultyKind } from "./faulty-trial.ts";

/** Every kind of bad trial with its near miss: what must be refused or warned, and what must not be for that reason. */
export const faultyKinds: readonly FaultyKind[] = [...faultyMovements, ...faultyRecordings];

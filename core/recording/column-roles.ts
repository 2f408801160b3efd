import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Confidence } from "./request.ts";

/** Why a column plays its part, and how sure that is. */
export interface RoleReason {
  readonly words: string;
  readonly confidence: Confidence;
}

/** Which columns (indices from 0) carry a force; several of one part are added. */
export interface ForceRoles {
  readonly left: readonly number[];
  readonly right: readonly number[];
  readonly total: readonly number[];
}

/** Which column (index from 0) plays which part. */
export interface ColumnRoles extends ForceRoles {
  readonly time?: number;
  readonly reasons: ReadonlyMap<number, RoleReason>;
  /** With a refusal among them the force columns are not to be used. */
  readonly findings: readonly Finding[];
}

/** Undefined for a column of text. */
export type Columns = readonly (Float64Array | undefined)[];

/** How the columns are stated on the command line. */
export const columnsExample = "--columns time=1,left=2,right=3";

/** Refuses because it is not clear which column is which. */
export function columnsUnclear(message: string, action = `State which column is which (${columnsExample}).`): Finding {
  return proseFinding("columns-unclear", "refusal", message, action);
}

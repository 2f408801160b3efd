import type { Finding } from "../ground/finding.ts";
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

import type { RecordContent, RecordKind } from "./record-schemas.ts";

/** Records point at other records by these names, each always at the same kind. */
export const referenceKinds = {
  athlete: "athletes",
  injury: "injuries",
  session: "sessions",
  protocol: "protocols",
  recording: "recordings",
} as const satisfies Readonly<Record<string, RecordKind>>;

export type ReferenceName = keyof typeof referenceKinds;

/** The references a record has; an absent one points nowhere. */
export type References = { readonly [Name in ReferenceName]?: string };

/** The references of each kind in the order of their columns; parents stand before children. */
export const recordTables = {
  athletes: {},
  protocols: {},
  settingsDocuments: {},
  injuries: { athlete: "required" },
  operations: { athlete: "required", injury: "optional" },
  sessions: { athlete: "optional", protocol: "optional" },
  recordings: { session: "required" },
  trials: { recording: "required" },
  enteredFindings: { athlete: "required", session: "optional" },
  consents: { athlete: "required" },
  decisions: { athlete: "required", session: "optional" },
  copies: { athlete: "optional" },
} as const satisfies Readonly<Record<RecordKind, { readonly [Name in ReferenceName]?: "required" | "optional" }>>;

/** Every kind, parents first. */
export const recordKinds = Object.keys(recordTables) as readonly RecordKind[];

/** The columns in which a kind keeps its references. */
export function referenceNames(kind: RecordKind): readonly ReferenceName[] {
  return Object.keys(recordTables[kind]) as readonly ReferenceName[];
}

/** Names one record. */
export interface RecordKey {
  readonly kind: RecordKind;
  readonly id: string;
}

/** What a record says at one time. */
export interface RecordState {
  readonly references: References;
  /** In the bin: kept, shown nowhere but there. */
  readonly binned: boolean;
  readonly content: unknown;
}

/** One record as it is stored. */
export interface StoredRecord<Kind extends RecordKind = RecordKind> extends RecordState {
  readonly kind: Kind;
  readonly id: string;
  readonly content: RecordContent<Kind>;
}

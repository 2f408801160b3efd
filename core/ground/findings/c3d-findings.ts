type Nothing = Readonly<Record<never, never>>;

/** What parts of a C3D file may state differently. */
export type C3dCount = "points" | "data type" | "data start" | "frames";

/** A defect of the parameter section and its byte; `what` is a clause. */
interface Defect {
  readonly at: number;
  readonly what: string;
}

/** The figures of what is found in the bytes of a C3D file. */
export interface C3dFindings {
  readonly "parts-contradict/statements": {
    readonly about: C3dCount;
    readonly statements: readonly { readonly from: string; readonly value: number | string }[];
    readonly used: number | string;
  };
  readonly "parts-contradict/analog-values": {
    readonly analogValues: number;
    readonly samplesPerFrame: number;
    readonly channels: number;
    readonly usedChannels: number;
    readonly usedSamplesPerFrame: number;
  };
  readonly "parts-contradict/frames-left-over": { readonly stated: number; readonly surplus: number };
  readonly "scaling-assumed/general-scale": Nothing;
  /** Channels counted from 1. */
  readonly "scaling-assumed/channels": {
    readonly name: string;
    readonly fromChannel: number;
    readonly toChannel: number;
    readonly taken: number;
  };
  /** The first defects, and how many more there are. */
  readonly "parameters-damaged": { readonly defects: readonly Defect[]; readonly others: number };
  readonly "unreadable/processor": { readonly processor: number };
  readonly "truncated/no-parameters": Nothing;
  readonly "truncated/no-frames": { readonly stated: number };
  readonly "truncated/frames-missing": { readonly stated: number; readonly held: number };
  readonly "rate-contradicts/frame-rates": {
    readonly parameterHz: number;
    readonly headerHz: number;
    readonly usedHz: number;
  };
  readonly "rate-contradicts/analog-rate": {
    readonly analogHz: number;
    readonly samplesPerFrame: number;
    readonly frameRateHz: number;
    readonly usedHz: number;
  };
}

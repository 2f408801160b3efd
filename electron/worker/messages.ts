import type { HostRequestName } from "../host-api.ts";

/** What a worker is started with. */
export interface HostWorkerData {
  readonly host: "window" | "browser";
  /** Folder of the demo world's recordings. */
  readonly sampleTraces: string;
  /** Folder of the user's data with the register; absent: the host keeps none, and begins with the demo in memory. */
  readonly dataFolder?: string;
}

/** A request that was checked before it was sent on; `id` comes back with the answer. */
export interface WorkerRequest {
  readonly id: number;
  readonly name: HostRequestName;
  readonly request: unknown;
}

/** What came of it: a reply, a sentence for the person, or a mistake of our own with its stack. */
export type WorkerAnswer =
  | { readonly id: number; readonly kind: "done"; readonly reply: unknown }
  | { readonly id: number; readonly kind: "refused"; readonly message: string }
  | { readonly id: number; readonly kind: "broken"; readonly stack: string };

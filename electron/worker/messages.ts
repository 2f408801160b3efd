import type { HostRequestName } from "../boundary/host-api.ts";
import type { GuardedFile } from "../threads/file-guard.ts";
import type { HeldChange, HeldState } from "./held-state.ts";

/** What a worker is started with. */
export interface HostWorkerData {
  readonly host: "window" | "browser";
  /** Folder of the demo world's recordings. */
  readonly sampleTraces: string;
  /** Folder of the user's data with the register; absent: the host keeps none, and begins with the demo in memory. */
  readonly dataFolder?: string;
}

/** What a worker that takes the place of another one goes on with. */
export interface Restored {
  /** Absent where the other one ended before it told anything. */
  readonly held?: HeldState;
  /** How the other one ended, in words for the person; "" where it was ended on purpose. */
  readonly words: string;
  /** Hashes of files that are not opened any more. */
  readonly putAside: readonly string[];
}

export interface HostWorkerStart extends HostWorkerData {
  readonly restored?: Restored;
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

/** What a worker says: answers, and beside them what the thread that stays must know. */
export type WorkerWords =
  | WorkerAnswer
  /** Work on a file begins. */
  | { readonly kind: "working"; readonly file: GuardedFile }
  /** What would be lost with the thread has changed. */
  | { readonly kind: "held"; readonly change: HeldChange }
  /** The register was locked: the thread that held its key handles nothing any more and is to be ended. */
  | { readonly kind: "locked" };

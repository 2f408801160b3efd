import type { Stated, StoredSession } from "../files/stored-session.ts";
import type { HeldHistory } from "./edit-history.ts";

/** What lives in the working thread alone, sessions of the register aside: all that would be lost with the thread. */

export interface HeldWorkspace {
  readonly sessions: readonly StoredSession[];
  /** What was stated about each session when it was read, or last taken along. */
  readonly takenAlong: readonly (readonly [folder: string, description: Stated["description"]])[];
  readonly history: HeldHistory;
  /** Folder of the session that is shown, whether of the register or not. */
  readonly shown: string;
  readonly demo: boolean;
  /** Where each batch that is coming in puts its folders. */
  readonly batches: readonly (readonly [batch: string, places: readonly (readonly [string, string])[]])[];
}

import type { RegisterView } from "../boundary/register-view.ts";

/** The register that is open, and the sessions of it that are shown, or will be once it is unlocked. */

export interface HeldRegister {
  readonly kind: RegisterView["kind"];
  readonly sessions: readonly string[];
  /** Protected, and its contents can be read. */
  readonly unlocked: boolean;
}

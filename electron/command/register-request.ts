import type { Progress } from "../register/keys/conversion.ts";

/** What was asked of the register. */
export interface RegisterRequest {
  readonly options: Readonly<Partial<Record<(typeof registerOptionNames)[number], string>>>;
  readonly paths: readonly string[];
  readonly filePassphrase?: Uint8Array;
  readonly newPassphrase?: Uint8Array;
  /** Says how far long work is. */
  readonly tell: (progress: Progress) => void;
}

/** What came of it: one document for programs, the same in lines for people. */
export interface RegisterAnswer {
  readonly document: unknown;
  /** A line of several columns is a list of its cells. */
  readonly lines: readonly (string | readonly string[])[];
  /** Said beside the result. */
  readonly remarks?: readonly string[];
  readonly needsEyes?: boolean;
}
export const registerOptionNames = [
  "register",
  "format",
  "passphrase-file",
  "file-passphrase-file",
  "new-passphrase-file",
  "out",
  "athlete",
  "search",
  "confirm",
  "cautions",
  "by",
  "code",
  "verify",
  "gone",
] as const;

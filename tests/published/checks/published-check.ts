/** One value that somebody else stated, and what the program makes of the same. */
export interface PublishedCheck {
  /** What is checked, with the inputs. */
  readonly check: string;
  /** Where the expected value is from: a publication, "common practice", "from memory", or how it was worked out. */
  readonly source: string;
  readonly expected: number;
  /** UCUM, `1` for a pure number. */
  readonly unit: string;
  /** Absolute, in the same unit; as a rule half of the last printed digit. */
  readonly tolerance: number;
  readonly ours: () => number;
}

/** Checks of one subject. */
export interface CheckGroup {
  readonly subject: string;
  readonly checks: readonly PublishedCheck[];
}

/** True where the program's value lies within the tolerance. */
export function agrees({ expected, tolerance }: PublishedCheck, ours: number): boolean {
  return Math.abs(ours - expected) <= tolerance;
}

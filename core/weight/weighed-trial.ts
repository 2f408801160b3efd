/** The part of an athlete's weight that one plate carried. */
export interface PlateShare {
  readonly plate: string;
  /** Of the whole, 0 to 1; the shares of a trial add up to 1. */
  readonly share: number;
}

/** What one trial says about body weight; small, and free of curves. */
export interface WeighedTrial {
  readonly file: string;
  /** Counted from 1. */
  readonly trial: number;
  /** The plates that carried the body, while it was weighed or, without a weighing, through the movement. */
  readonly shares: readonly PlateShare[];
  /** The trial's own weighing; absent when nobody stood still. */
  readonly own?: {
    readonly newtons: number;
    /** Standard uncertainty with those of the plates' zeros, newtons. */
    readonly uncertainty: number;
  };
  /**
   * Standing after a landing that may not be the whole body at rest: short, or on one leg while the other foot may be
   * down beside the plate. It weighs only where it agrees with the session.
   */
  readonly doubtful: boolean;
  /** The other foot carries load on its own plate in that standing: it weighs only where the session bears it out. */
  readonly otherFoot: boolean;
  readonly excluded: boolean;
  /** A person keeps the trial although its weight differs. */
  readonly kept: boolean;
}

/** Names a trial among those of its session. */
export type TrialName = Pick<WeighedTrial, "file" | "trial">;

/** A trial with a weighing of its own. */
export type OwnWeighing = WeighedTrial & { readonly own: NonNullable<WeighedTrial["own"]> };

export function hasOwn(trial: WeighedTrial): trial is OwnWeighing {
  return trial.own !== undefined;
}

/** Samples of a plate that were not measured. */
interface Stuck {
  readonly plate: string;
  readonly newtons: number;
  readonly samples: number;
  /** What it costs: the velocity, or else only where it lies. */
  readonly cost: "velocity" | "before weighing" | "in or after landing";
}

/** The figures of what the force of a recording says against it and its plates. */
export interface SignalFindings {
  /** A plate keeps one value while the other carries the athlete. */
  readonly "plate-dead": {
    readonly plate: string;
    readonly other: string;
    readonly newtons: number;
    readonly seconds: number;
  };
  readonly "plates-equal": { readonly first: string; readonly second: string; readonly samples: number };
  readonly "plate-turned": {
    readonly plate: string;
    readonly other: string;
    readonly downNewtons: number;
    readonly otherUpNewtons: number;
  };
  readonly "plate-offset": { readonly plate: string; readonly newtons: number };
  readonly "plate-drift": {
    readonly plate: string;
    readonly newtons: number;
    readonly fromSeconds: number;
    readonly toSeconds: number;
  };
  /** Noise hides a flight; `humHz` where it is that of the mains. */
  readonly "plate-noisy/recording": { readonly newtons: number; readonly humHz?: number };
  readonly "sign-changes": { readonly loadNewtons: number; readonly lowestNewtons: number; readonly seconds: number };
  /** Each value stands several times in a row. */
  readonly "rate-not-real": { readonly times: number; readonly realHz: number; readonly rateHz: number };
  readonly smoothed: { readonly footSeconds: number };
  readonly "samples-lost": Stuck;
  readonly "samples-held": Stuck;
}

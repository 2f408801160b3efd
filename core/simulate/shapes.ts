/**
 * How a push is built between the start of the dip and take-off. Every transition is a cubic ease, so force is smooth
 * up to the straight fall to zero at take-off.
 */
export interface PushShape {
  readonly name: PushShapeName;
  /** What a person sees in the curve. */
  readonly shows: string;
  /** Least force of the unweighting as a part of body weight, used when no depth is asked for. */
  readonly minimum: number;
  /** Part of the unweighting stretch spent on the way down to the minimum; the rest is held there. */
  readonly dipFraction: number;
  /**
   * Parts of the time between unweighting and the last fall: rise, last climb to the first peak, fall to the
   * valley, valley, climb, last climb to the second peak. Sum 1.
   */
  readonly parts: readonly [number, number, number, number, number, number];
  /** Net force in the valley as a part of the mean net force of the two peaks beside it. */
  readonly valley: number;
  /** What the length of the unweighting stretch is solved for. */
  readonly balance:
    | { readonly kind: "peak-ratio"; readonly brakingOverPropulsion: number }
    | { readonly kind: "lowest-in-valley" };
}

/** How a landing is built between touchdown and standing again. */
export interface LandingShape {
  readonly name: LandingShapeName;
  readonly shows: string;
  /** Rate at which force meets the plate, in body weights a second (the bounds of 10 to 100 kN/s hold on top). */
  readonly ratePerSecond: number;
  /** Seconds from the peak to the level at which the body comes to rest and rises again. */
  readonly decaySeconds: number;
  /** That level above body weight, as a part of it. */
  readonly riseLevel: number;
  /** Seconds of rising and of settling. */
  readonly riseSeconds: number;
  readonly settleSeconds: number;
  /** A first, smaller peak (forefoot before heel): its part of the main peak, and of the dip after it. */
  readonly firstPeak?: { readonly fraction: number; readonly dipFraction: number };
}

/** A contact between two flights: a first level is reached, a middle one, a second; both levels are solved for. */
interface TwoLevelContact {
  readonly kind: "two-levels";
  readonly name: string;
  readonly shows: string;
  /** Parts of the contact spent on reaching the first level and on leaving the second. */
  readonly rise: number;
  readonly knee: number;
  /** Where between the two levels the middle lies (0 to 1), and how far above (below: negative) their mean. */
  readonly split: number;
  readonly bulge: number;
}

/** A contact with the force of a spring-mass hop. */
interface HalfSineContact {
  readonly kind: "half-sine";
  readonly name: string;
  readonly shows: string;
}

/** How a contact between two flights is built. */
export type ContactShape = TwoLevelContact | HalfSineContact;

/** How a rise from a hold is built: a first level is reached, a middle one above their mean, a second. */
export interface RiseShape {
  readonly name: string;
  readonly shows: string;
  /** Part of the time until the last fall spent on reaching the first level. */
  readonly rise: number;
  /** Where between the two levels the middle lies (0 to 1), and how far above their mean net force. */
  readonly split: number;
  readonly bulge: number;
}

/** Fixed before any detector was tuned; the tables of accuracy run over all of them. */
export const pushShapes = {
  even: {
    name: "even",
    shows: "one broad rise, braking and propulsion about equally high",
    minimum: 0.4,
    dipFraction: 0.8,
    parts: [0.35, 0.05, 0.25, 0, 0.25, 0.1],
    valley: 0.92,
    balance: { kind: "peak-ratio", brakingOverPropulsion: 0.9 },
  },
  "slow-dip": {
    name: "slow-dip",
    shows: "a long, gentle unweighting before a late push",
    minimum: 0.55,
    dipFraction: 0.9,
    parts: [0.38, 0.04, 0.24, 0, 0.24, 0.1],
    valley: 0.9,
    balance: { kind: "peak-ratio", brakingOverPropulsion: 0.75 },
  },
  "two-peaked": {
    name: "two-peaked",
    shows: "a peak at the end of braking, a clear valley, a second peak before take-off",
    minimum: 0.4,
    dipFraction: 0.8,
    parts: [0.32, 0.02, 0.24, 0.02, 0.28, 0.12],
    valley: 0.45,
    balance: { kind: "peak-ratio", brakingOverPropulsion: 1 },
  },
  "bottom-pause": {
    name: "bottom-pause",
    shows: "the body almost rests at the bottom, force near body weight, before it pushes",
    minimum: 0.45,
    dipFraction: 0.8,
    parts: [0.24, 0.03, 0.19, 0.22, 0.22, 0.1],
    valley: 0.14,
    balance: { kind: "lowest-in-valley" },
  },
  "early-rise": {
    name: "early-rise",
    shows: "force rises early to its peak in braking and falls steadily through propulsion",
    minimum: 0.35,
    dipFraction: 0.75,
    parts: [0.36, 0.08, 0.34, 0, 0.12, 0.1],
    valley: 0.85,
    balance: { kind: "peak-ratio", brakingOverPropulsion: 1.5 },
  },
  "late-rise": {
    name: "late-rise",
    shows: "weak braking, force keeps rising to a peak late in propulsion",
    minimum: 0.45,
    dipFraction: 0.85,
    parts: [0.3, 0.06, 0.14, 0, 0.36, 0.14],
    valley: 0.75,
    balance: { kind: "peak-ratio", brakingOverPropulsion: 0.55 },
  },
} as const satisfies Readonly<Record<string, Omit<PushShape, "name"> & { readonly name: string }>>;

/** Fixed together with the push shapes. */
export const landingShapes = {
  ordinary: {
    name: "ordinary",
    shows: "one landing peak, moderate absorption",
    ratePerSecond: 65,
    decaySeconds: 0.14,
    riseLevel: 0.2,
    riseSeconds: 0.32,
    settleSeconds: 0.4,
  },
  soft: {
    name: "soft",
    shows: "a low, late peak and a deep absorption",
    ratePerSecond: 40,
    decaySeconds: 0.26,
    riseLevel: 0.2,
    riseSeconds: 0.4,
    settleSeconds: 0.5,
  },
  stiff: {
    name: "stiff",
    shows: "a high, early peak and a short absorption",
    ratePerSecond: 120,
    decaySeconds: 0.08,
    riseLevel: 0.2,
    riseSeconds: 0.28,
    settleSeconds: 0.36,
  },
  "two-peaked": {
    name: "two-peaked",
    shows: "forefoot first: a small early peak, a dip, then the main peak",
    ratePerSecond: 80,
    decaySeconds: 0.13,
    riseLevel: 0.2,
    riseSeconds: 0.32,
    settleSeconds: 0.4,
    firstPeak: { fraction: 0.45, dipFraction: 0.3 },
  },
} as const satisfies Readonly<Record<string, Omit<LandingShape, "name"> & { readonly name: string }>>;

/** Fixed together with the push shapes. */
export const contactShapes = {
  hump: {
    kind: "two-levels",
    name: "hump",
    shows: "one hump, highest about the lowest position",
    rise: 0.26,
    knee: 0.24,
    split: 0.5,
    bulge: 0.2,
  },
  "early-hump": {
    kind: "two-levels",
    name: "early-hump",
    shows: "highest in braking, falling steadily through propulsion",
    rise: 0.18,
    knee: 0.34,
    split: 0.35,
    bulge: 0.14,
  },
  "impact-peak": {
    kind: "two-levels",
    name: "impact-peak",
    shows: "a sharp early peak when the heel strikes, a dip, then the push",
    rise: 0.14,
    knee: 0.3,
    split: 0.3,
    bulge: -0.2,
  },
  "two-peaked": {
    kind: "two-levels",
    name: "two-peaked",
    shows: "a peak in braking and another in propulsion, a shallow valley between",
    rise: 0.24,
    knee: 0.22,
    split: 0.5,
    bulge: -0.12,
  },
  "half-sine": {
    kind: "half-sine",
    name: "half-sine",
    shows: "the force of a body bouncing on a spring",
  },
} as const satisfies Readonly<Record<string, ContactShape>>;

export type ContactShapeName = keyof typeof contactShapes;
export type PushShapeName = keyof typeof pushShapes;
export type LandingShapeName = keyof typeof landingShapes;

/** Fixed together with the push shapes. */
export const riseShapes = {
  even: { name: "even", shows: "force rises to one broad hump", rise: 0.4, split: 0.5, bulge: 0.12 },
  early: { name: "early", shows: "force rises at once and then stays", rise: 0.22, split: 0.4, bulge: 0.1 },
  late: {
    name: "late",
    shows: "force keeps rising to a peak shortly before take-off",
    rise: 0.5,
    split: 0.7,
    bulge: 0.25,
  },
} as const satisfies Readonly<Record<string, RiseShape>>;

export type RiseShapeName = keyof typeof riseShapes;
export const riseShapeNames = Object.keys(riseShapes) as readonly RiseShapeName[];
export const contactShapeNames = Object.keys(contactShapes) as readonly ContactShapeName[];
export const pushShapeNames = Object.keys(pushShapes) as readonly PushShapeName[];
export const landingShapeNames = Object.keys(landingShapes) as readonly LandingShapeName[];

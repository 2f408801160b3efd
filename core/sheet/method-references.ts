/** A publication the printed methods paragraph may name. */
export interface MethodReference {
  /** As cited in the sentence. */
  readonly short: string;
  /** As listed behind the paragraph. */
  readonly full: string;
}

/**
 * Only publications whose statement was read in the source itself, as the project's list of checks marks them (its
 * sections stand beside); whatever is known from memory alone may guide the program but is never printed.
 */
export const methodReferences = {
  // A1: weighing second, five standard deviations, 30 ms.
  owen: { short: "Owen et al. 2014", full: "Owen et al. 2014, J Strength Cond Res 28(6):1552–1558" },
  // A2: names of the phases; braking starts after the peak negative velocity and ends at zero velocity.
  mcmahon: { short: "McMahon et al. 2018", full: "McMahon et al. 2018, Strength Cond J 40(4):96–106" },
  // A5: height by flight time and by impulse and momentum.
  linthorne: { short: "Linthorne 2001", full: "Linthorne 2001, Am J Phys 69(11):1198–1204" },
  // I1: limits of a ratio.
  fieller: { short: "Fieller 1954", full: "Fieller 1954, J R Stat Soc B 16:175–185" },
} as const satisfies Readonly<Record<string, MethodReference>>;

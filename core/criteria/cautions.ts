/** What every sheet and the criteria screen say, whatever was measured. */
export const standingCautions: readonly string[] = [
  "Most return-to-sport criteria rest on low-certainty evidence: a criterion that is met describes today's jumps, not the chance of another injury.",
  "Symmetry can flatter: when the other limb has lost strength too, the index rises although neither limb has gained. Look at the values of both limbs.",
  "Local protocols, the surgeon's restrictions and licensed professional judgement come first. The treating clinician decides, writes and signs.",
  "This is a calculation aid for trained staff, not a certified medical device.",
];

/** What the intervals leave out; said wherever they decide a status (METHODS §8). */
export const intervalCaution =
  "Intervals come from the spread of today's trials; change from day to day is not in them.";

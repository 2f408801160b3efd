/** How a measure is called and defined. */
export interface MeasureWords {
  /** Quantity first, in full words, without the phase when the group says it. */
  readonly label: string;
  /** The definition in one plain sentence. */
  readonly definition: string;
}

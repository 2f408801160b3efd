/** The part of Fili used here; the package brings no types. */
declare module "fili" {
  /** y[n] = b0·x[n] + b1·x[n-1] + b2·x[n-2] - a[0]·y[n-1] - a[1]·y[n-2], to be multiplied by k. */
  interface SecondOrderSection {
    readonly b: readonly [number, number, number];
    readonly a: readonly [number, number];
    readonly k: number;
  }
  interface CascadeDesign {
    /** `order` counts second-order sections: 1 is a second-order filter. */
    lowpass(options: {
      readonly order: number;
      readonly characteristic: "butterworth";
      readonly Fs: number;
      readonly Fc: number;
    }): readonly SecondOrderSection[];
  }
  const Fili: { readonly CalcCascades: new () => CascadeDesign };
  export default Fili;
}

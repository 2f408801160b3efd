/** The part of PapaParse used here. Its published types bring Node's along, which the pure core may not see. */
declare module "papaparse" {
  interface ParseOptions {
    readonly delimiter: string;
    readonly newline: "\n";
  }
  const Papa: {
    parse(text: string, options: ParseOptions): { readonly data: readonly (readonly string[])[] };
  };
  export default Papa;
}

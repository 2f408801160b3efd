/** pdfmake 0.3 carries no types of its own; this is the part that is used. */
declare module "pdfmake" {
  interface FontFiles {
    readonly normal: string;
    readonly bold: string;
    readonly italics: string;
    readonly bolditalics: string;
  }
  const pdfmake: {
    addFonts(fonts: Readonly<Record<string, FontFiles>>): void;
    setUrlAccessPolicy(allow: (url: string) => boolean): void;
    setLocalAccessPolicy(allow: (path: string) => boolean): void;
    createPdf(definition: object): { getBuffer(): Promise<Uint8Array> };
  };
  export default pdfmake;
}

/** Left, top, right, bottom in points. */
type PdfMargin = readonly [number, number, number, number];

/** Looks of a piece of text; sizes in points, colours as #RRGGBB. */
interface PdfStyle {
  readonly font?: string;
  readonly fontSize?: number;
  readonly lineHeight?: number;
  readonly bold?: boolean;
  readonly color?: string;
  readonly margin?: PdfMargin;
  readonly alignment?: "left" | "right";
}

/** How a table is ruled and padded, in points; rows and columns are counted from 0, lines from the one above row 0. */
export interface PdfTableLayout {
  readonly hLineWidth?: (line: number) => number;
  readonly hLineColor?: (line: number) => string;
  readonly vLineWidth?: (line: number) => number;
  readonly paddingLeft?: (column: number) => number;
  readonly paddingRight?: (column: number) => number;
  readonly paddingTop?: (row: number) => number;
  readonly paddingBottom?: (row: number) => number;
}

/** A ruled line of a drawing, in points from its own corner. */
interface PdfRule {
  readonly type: "line";
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly lineWidth: number;
  readonly lineColor: string;
}

/** One piece of content; exactly one of `text`, `ul`, `stack`, `columns`, `table`, `svg` and `canvas` says what it is. */
export interface PdfContent extends PdfStyle {
  readonly text?: string | readonly PdfContent[];
  readonly ul?: readonly PdfContent[];
  readonly stack?: readonly PdfContent[];
  readonly columns?: readonly PdfContent[];
  readonly table?: {
    readonly widths: readonly (string | number)[];
    readonly body: readonly (readonly PdfContent[])[];
    readonly headerRows?: number;
    readonly keepWithHeaderRows?: number;
    readonly dontBreakRows?: boolean;
  };
  /** An SVG picture as text. */
  readonly svg?: string;
  readonly canvas?: readonly PdfRule[];
  readonly style?: string;
  readonly layout?: PdfTableLayout;
  readonly width?: number | string;
  readonly columnGap?: number;
  readonly colSpan?: number;
  readonly fillColor?: string;
  readonly headlineLevel?: number;
  readonly unbreakable?: boolean;
  readonly noWrap?: boolean;
  readonly pageBreak?: "before";
}

/** The part of pdfmake's document definition that the sheet uses. */
export interface SheetPdfDefinition {
  readonly pageSize: "A4";
  readonly pageMargins: PdfMargin;
  readonly language: string;
  readonly displayTitle: boolean;
  readonly info: {
    readonly title: string;
    readonly subject: string;
    readonly creator: string;
    readonly producer: string;
  };
  readonly defaultStyle: PdfStyle;
  readonly styles: Readonly<Record<string, PdfStyle>>;
  readonly content: readonly PdfContent[];
  readonly header: (currentPage: number) => PdfContent;
  readonly footer: (currentPage: number, pageCount: number) => PdfContent;
  readonly pageBreakBefore: (node: {
    readonly headlineLevel?: number;
    /** Where it would start; the ratio counts from the top of the page between the margins. */
    readonly startPosition?: { readonly verticalRatio: number };
  }) => boolean;
}

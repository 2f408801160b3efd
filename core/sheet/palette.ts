/** Colours of the sheet, the same tokens as on the screens. */
export interface SheetPalette {
  readonly paper: string;
  readonly surface: string;
  readonly ink: string;
  readonly muted: string;
  readonly line: string;
  readonly band: string;
  readonly involved: string;
  readonly uninvolved: string;
  readonly cautionInk: string;
  readonly cautionPaper: string;
}

export const lightPalette: SheetPalette = {
  paper: "#F6F4EF",
  surface: "#FFFFFF",
  ink: "#1E2328",
  muted: "#59626A",
  line: "#DAD5CA",
  band: "#F1EDE4",
  involved: "#9C2F5E",
  uninvolved: "#1B6A70",
  cautionInk: "#7A4E00",
  cautionPaper: "#FFF3D9",
};

export const darkPalette: SheetPalette = {
  paper: "#14171A",
  surface: "#1C2024",
  ink: "#E9E6E0",
  muted: "#A6AEB5",
  line: "#343A40",
  band: "#2A3035",
  involved: "#F293BA",
  uninvolved: "#74CBD1",
  cautionInk: "#F0CC86",
  cautionPaper: "#33290F",
};

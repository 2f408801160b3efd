import {
  type CSSVariablesResolver,
  createTheme,
  defaultVariantColorsResolver,
  type MantineColorsTuple,
} from "@mantine/core";

/** Shades of the accent from light to dark; 3 is the accent of the dark scheme, 8 that of the light one. */
const accent: MantineColorsTuple = [
  "#eef2fb",
  "#dbe4f7",
  "#c3d3f3",
  "#a9c0ee",
  "#86a3dc",
  "#6586c5",
  "#4b6cac",
  "#395a92",
  "#2b4a7a",
  "#1f3760",
];

export const theme = createTheme({
  colors: { accent },
  primaryColor: "accent",
  primaryShade: { light: 8, dark: 3 },
  variantColorResolver: (input) =>
    input.variant === "filled"
      ? {
          background: "var(--accent)",
          hover: "color-mix(in srgb, var(--accent) 88%, var(--ink))",
          color: "var(--on-accent)",
          border: "1px solid transparent",
        }
      : defaultVariantColorsResolver(input),
  fontFamily: '"Source Sans 3", system-ui, sans-serif',
  fontSizes: { xs: "13px", sm: "14px", md: "14px", lg: "15px", xl: "17px" },
  headings: { fontWeight: "600" },
  defaultRadius: "sm",
  cursorType: "pointer",
  respectReducedMotion: true,
});

/** Lets the component library draw with the tokens of tokens.css. */
export const tokensResolver: CSSVariablesResolver = () => ({ variables: {}, light: tokens, dark: tokens });

const tokens: Record<string, string> = {
  "--mantine-color-body": "var(--paper)",
  "--mantine-color-text": "var(--ink)",
  "--mantine-color-dimmed": "var(--muted)",
  "--mantine-color-placeholder": "var(--muted)",
  "--mantine-color-default": "var(--surface)",
  "--mantine-color-default-hover": "var(--band)",
  "--mantine-color-default-color": "var(--ink)",
  "--mantine-color-default-border": "var(--edge)",
  "--mantine-color-error": "var(--caution)",
};

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { darkPalette, lightPalette, type SheetPalette } from "../../core/sheet/palette.ts";

const css = readFileSync(new URL("../../renderer/shell/tokens.css", import.meta.url), "utf8");

function tokensOf(selector: string): ReadonlyMap<string, string> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf("}", start));
  return new Map([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((match) => [match[1]!, match[2]!]));
}

const schemes = [
  { name: "light", tokens: tokensOf(":root"), palette: lightPalette },
  { name: "dark", tokens: tokensOf(':root[data-mantine-color-scheme="dark"]'), palette: darkPalette },
];

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(first: string, second: string): number {
  const [low, high] = [luminance(first), luminance(second)].sort((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

const leastForText = 4.5;
const leastForEdges = 3;

describe.each(schemes)("the colours of the $name screens", ({ tokens, palette }) => {
  const colour = (name: string) => tokens.get(name) ?? "missing";

  it("are those of the sheet", () => {
    const names: readonly (keyof SheetPalette & string)[] = [
      "paper",
      "surface",
      "ink",
      "muted",
      "line",
      "involved",
      "uninvolved",
    ];
    for (const name of names) expect(colour(name)).toBe(palette[name].toLowerCase());
  });

  it("keep text readable on everything it stands on", () => {
    const grounds = ["paper", "surface", "band", "selected"];
    for (const text of ["ink", "muted", "accent", "involved", "uninvolved", "caution"]) {
      for (const ground of grounds) expect(contrast(colour(text), colour(ground))).toBeGreaterThanOrEqual(leastForText);
    }
    expect(contrast(colour("caution"), colour("caution-surface"))).toBeGreaterThanOrEqual(leastForText);
    expect(contrast(colour("on-accent"), colour("accent"))).toBeGreaterThanOrEqual(leastForText);
    expect(contrast(colour("muted"), colour("band2"))).toBeGreaterThanOrEqual(leastForText);
  });

  it("keep the edges of controls visible", () => {
    for (const ground of ["paper", "surface"]) {
      expect(contrast(colour("edge"), colour(ground))).toBeGreaterThanOrEqual(leastForEdges);
    }
  });
});

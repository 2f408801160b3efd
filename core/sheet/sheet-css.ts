import type { SheetDocument } from "./document.ts";
import { darkPalette, lightPalette, type SheetPalette } from "./palette.ts";

/** The style of the HTML sheet: paper and ink on a screen, light or dark as the reader likes it; A4 in ink when printed. */
export function sheetCss(sheet: SheetDocument): string {
  return `:root { color-scheme: light dark; ${variables(lightPalette)} }
@media (prefers-color-scheme: dark) { :root { ${variables(darkPalette)} } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 14px/1.45 "Source Sans 3", "Segoe UI", system-ui, "Noto Sans", "DejaVu Sans", sans-serif; font-variant-numeric: tabular-nums; }
main { max-width: 58rem; margin: 0 auto; padding: 1.5rem 1rem 2rem; }
h1 { margin: 0; font-size: 1.5rem; line-height: 1.2; }
h2 { margin: 1.4rem 0 0.4rem; font-size: 1.1rem; }
h3 { margin: 1rem 0 0.3rem; font-size: 1rem; }
p { margin: 0.3rem 0; max-width: 48rem; }
.subtitle, .muted, .behind, footer { color: var(--muted); }
.behind { font-weight: 400; font-size: 0.92em; }
.banner, .caution { padding: 0.5rem 0.75rem; border-radius: 4px; background: var(--caution-paper); color: var(--caution-ink); }
.banner { margin: 0 0 0.8rem; max-width: none; }
.page { margin-top: 1rem; padding: 0.4rem 1.25rem 1.25rem; background: var(--surface); border: 1px solid var(--line); border-radius: 6px; }
ul { margin: 0.3rem 0; padding-left: 1.1rem; }
li { margin: 0.15rem 0; max-width: 48rem; }
dl { margin: 0.8rem 0 0; }
dd { margin: 0; }
.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(19rem, 1fr)); gap: 0.1rem 1.5rem; }
.facts div { display: grid; grid-template-columns: 8.5rem 1fr; gap: 0.5rem; }
.facts .wide { grid-column: 1 / -1; }
dt { color: var(--muted); }
.scroll { overflow-x: auto; }
table { width: 100%; margin: 0.8rem 0 0.4rem; border-collapse: collapse; }
caption { text-align: start; font-weight: 600; padding-bottom: 0.25rem; }
caption.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
th, td { padding: 0.28rem 0.5rem; text-align: start; vertical-align: top; border-bottom: 1px solid var(--line); font-weight: 400; }
th:first-child { padding-left: 0; }
th:last-child, td:last-child { padding-right: 0; }
thead th { color: var(--muted); font-size: 0.92em; vertical-align: bottom; border-bottom-color: var(--muted); }
thead .involved, .involved { color: var(--involved); }
thead .uninvolved, .uninvolved { color: var(--uninvolved); }
th.end, td.end { text-align: end; white-space: nowrap; }
thead th.end { white-space: initial; }
thead th.end, thead th.statuses, thead th.line { width: 1%; }
.status + .behind { display: block; padding-left: 1.3rem; }
.short { white-space: nowrap; }
.strong { font-weight: 600; }
.status { white-space: nowrap; }
svg { vertical-align: -2px; }
td.line { white-space: nowrap; }
.write-in { display: grid; grid-template-columns: 2fr 1fr 2fr; gap: 0.6rem 1.5rem; }
.write-in .tall { grid-column: 1 / -1; }
.write-in .line { display: block; height: 1.7rem; border-bottom: 1px solid var(--muted); }
footer { margin-top: 1rem; font-size: 0.86em; }
@page { size: A4; margin: 12mm 13mm 14mm; @bottom-left { content: ${cssString(sheet.footer)}; font: 7.5pt sans-serif; color: ${lightPalette.muted}; } @bottom-right { content: counter(page) " / " counter(pages); font: 7.5pt sans-serif; color: ${lightPalette.muted}; }${bannerBox(sheet)} }
@page :first { @top-left { content: none; } }
@media print {
  :root { color-scheme: light; ${variables(lightPalette)} }
  html { font-size: 8pt; }
  body { background: none; font-size: 1rem; line-height: 1.22; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  main { max-width: none; padding: 0; }
  .page { margin: 0; padding: 0; border: 0; background: none; }
  .page + .page { break-before: page; }
  h1 { font-size: 1.8rem; }
  h2 { margin: 0.65rem 0 0.15rem; font-size: 1.25rem; break-after: avoid; }
  p, li { max-width: none; }
  p.muted { font-size: 0.93rem; }
  table { margin: 0.5rem 0 0.3rem; }
  .banner { padding: 0.2rem 0.5rem; margin-bottom: 0.4rem; }
  .facts { grid-template-columns: 1fr 1fr; }
  .facts div { grid-template-columns: 7rem 1fr; }
  .write-in { gap: 0.4rem 1.5rem; }
  .write-in .line { height: 1.8rem; }
  .scroll { overflow: visible; }
  caption { break-after: avoid; }
  tr, .write-in, li { break-inside: avoid; }
  th, td { padding-block: 0.13rem; }
  footer { display: none; }
}`;
}

function bannerBox(sheet: SheetDocument): string {
  if (sheet.banner === "") return "";
  return ` @top-left { content: ${cssString(sheet.banner)}; font: 7.5pt sans-serif; color: ${lightPalette.cautionInk}; }`;
}

function variables(palette: SheetPalette): string {
  return [
    `--paper: ${palette.paper}`,
    `--surface: ${palette.surface}`,
    `--ink: ${palette.ink}`,
    `--muted: ${palette.muted}`,
    `--line: ${palette.line}`,
    `--band: ${palette.band}`,
    `--involved: ${palette.involved}`,
    `--uninvolved: ${palette.uninvolved}`,
    `--caution-ink: ${palette.cautionInk}`,
    `--caution-paper: ${palette.cautionPaper};`,
  ].join("; ");
}

/** A CSS string in which nothing can end the string or the style element. */
function cssString(text: string): string {
  const escaped = [...text].map((character) =>
    /[\p{L}\p{N} .,:;·“”()/-]/u.test(character) ? character : `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped.join("")}"`;
}

import type { Layout, LayoutAxis } from "plotly.js";
import type { ChartColours } from "./chart-colours.ts";

/** Fixed margins in pixels, so that overlays and the ribbon find the time axis without asking the chart library. */
export const chartMargins = { left: 58, right: 14, top: 22, bottom: 40 };

/** What all charts have in common: paper, type, fixed margins, no motion. */
export function baseLayout(colours: ChartColours): Partial<Layout> {
  return {
    paper_bgcolor: "rgba(0,0,0,0)",
    plot_bgcolor: "rgba(0,0,0,0)",
    font: { family: '"Source Sans 3", system-ui, sans-serif', size: 13, color: colours.muted },
    margin: { l: chartMargins.left, r: chartMargins.right, t: chartMargins.top, b: chartMargins.bottom, pad: 0 },
    showlegend: false,
    hovermode: false,
    dragmode: "zoom",
  };
}

/** An axis with its title, a light grid and true minus signs. */
export function axis(title: string, colours: ChartColours): Partial<LayoutAxis> {
  return {
    title: { text: title, standoff: 8, font: { size: 13, color: colours.muted } },
    gridcolor: colours.line,
    zeroline: false,
    automargin: false,
    ticklen: 0,
    tickfont: { size: 13 },
    separatethousands: false,
    fixedrange: true,
  };
}

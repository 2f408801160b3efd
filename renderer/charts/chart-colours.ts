import { useMemo, useSyncExternalStore } from "react";
import type { LimbRole } from "./limb-role.ts";

/** The tokens a chart draws with, as colours the chart library understands. */
export interface ChartColours {
  readonly surface: string;
  readonly ink: string;
  readonly muted: string;
  readonly line: string;
  readonly involved: string;
  readonly uninvolved: string;
  readonly total: string;
}

/** Reads the tokens again whenever the page is drawn in the other scheme. */
export function useChartColours(): ChartColours {
  const scheme = useSyncExternalStore(onSchemeChange, drawnScheme);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the tokens are other colours in the other scheme
  return useMemo(() => {
    const style = getComputedStyle(document.documentElement);
    const read = (name: string) => style.getPropertyValue(name).trim();
    return {
      surface: read("--surface"),
      ink: read("--ink"),
      muted: read("--muted"),
      line: read("--line"),
      involved: read("--involved"),
      uninvolved: read("--uninvolved"),
      total: read("--total"),
    };
  }, [scheme]);
}

const schemeAttribute = "data-mantine-color-scheme";

/** The scheme the tokens stand for at this moment; what was chosen may reach the page a little later. */
function drawnScheme(): string {
  return document.documentElement.getAttribute(schemeAttribute) ?? "";
}

function onSchemeChange(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributeFilter: [schemeAttribute] });
  return () => observer.disconnect();
}

/** Colour and line form of a limb. Form and colour both differ, so that either alone is enough. */
export function limbLine(
  role: LimbRole,
  colours: ChartColours,
): { readonly color: string; readonly dash: "solid" | "dash" } {
  switch (role) {
    case "involved":
      return { color: colours.involved, dash: "solid" };
    case "uninvolved":
      return { color: colours.uninvolved, dash: "dash" };
    case "left":
    case "plate-1":
      return { color: colours.ink, dash: "solid" };
    case "right":
    case "plate-2":
      return { color: colours.muted, dash: "dash" };
    case "total":
      return { color: colours.total, dash: "solid" };
  }
}

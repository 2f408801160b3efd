import { useComputedColorScheme } from "@mantine/core";
import { useMemo } from "react";
import type { LimbRole } from "../shell/limb-role.ts";

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

/** Reads the tokens again whenever the colour scheme changes. */
export function useChartColours(): ChartColours {
  const scheme = useComputedColorScheme("light");
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
      return { color: colours.ink, dash: "solid" };
    case "right":
      return { color: colours.muted, dash: "dash" };
    case "total":
      return { color: colours.total, dash: "solid" };
  }
}

import type { InvolvedSide, Side } from "../limb.ts";

/**
 * The involved side on a date, from injuries and operations: those up to it, and those whose date nobody knows; without
 * a date, from all of them. Nothing of the kind by then: nobody is injured.
 */
export function involvedSideAt(
  events: readonly { readonly side: Side; readonly date?: string }[],
  date: string | undefined,
): InvolvedSide {
  const sides = new Set(
    events
      .filter((each) => date === undefined || each.date === undefined || each.date <= date)
      .map((each) => each.side),
  );
  if (sides.size === 2) return "both";
  return [...sides][0] ?? "none";
}

import type { SessionDescription } from "../stated/session.ts";

/** The description with what was stated outside it: that the cautions nobody asked are not known. */
export function withStatedCautions(
  description: SessionDescription,
  { cautionsNotKnownBy: by }: { readonly cautionsNotKnownBy?: string },
): SessionDescription {
  if (by === undefined) return description;
  const { cautions } = description;
  const answers = [...(cautions?.answers ?? []), { notKnown: true as const, by }];
  return { ...description, cautions: { ...cautions, answers } };
}

import type { english } from "./english.ts";

/**
 * A language that the program speaks. The English one is its model: another one is a file beside it that has every key
 * of it, and does not compile while one is missing.
 */
export type Language = Readonly<Omit<typeof english, "tag">> & { readonly tag: string };

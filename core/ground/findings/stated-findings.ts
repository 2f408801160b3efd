type Nothing = Readonly<Record<never, never>>;

/** A place of a document that does not fit; `found` is absent where an entry itself is too many. */
interface Misfit {
  readonly path: string;
  /** What completes "… is expected". */
  readonly expected: string;
  readonly found?: string;
}

/** The figures of what is found in `core/stated`. */
export interface StatedFindings {
  /** `entry` is the place of the list's entry that is left out, where it is one of a list. */
  readonly "session-unreadable/entry": Misfit & { readonly entry?: string };
  readonly "session-unreadable/no-object": { readonly found: string };
  readonly "session-unreadable/unknown-entry": { readonly key: string; readonly known: readonly string[] };
  readonly "session-unreadable/empty": Nothing;
  readonly "session-unreadable/no-json": { readonly line: number; readonly character: number };
  /** `reason` completes "it …". */
  readonly "session-unreadable/beyond-limits": { readonly reason: string };
  readonly "session-unreadable/more-places": { readonly others: number };
  readonly "encoding-guessed/session": Nothing;
  readonly "layout-unreadable/beyond-limits": { readonly reason: string };
  readonly "layout-unreadable/no-json": Nothing;
  readonly "layout-unreadable/entry": Misfit;
}

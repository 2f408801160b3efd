/** One row's note and the kind of row it belongs to. */
export interface KindOfNote {
  readonly kind: string;
  readonly note: string;
}

/** What the notes of a group say together, and what each says besides. */
export interface SharedNotes {
  /** "" where no kind of row says anything in common. */
  readonly shared: string;
  /** In the order of the notes. */
  readonly own: readonly string[];
}

/**
 * Takes the sentences that all notes of one kind have in common out of them, so that they can be said once. Where there
 * are several kinds, only what is said of `kinds` can be told apart once it stands at the head; the rest stays.
 */
export function sharedNotes(notes: readonly KindOfNote[], kinds: readonly string[]): SharedNotes {
  const split = notes.map(({ kind, note }) => ({
    kind,
    sentences: note.split(/(?<=[.:!?]) (?=[\p{Lu}\d])/u).filter((each) => each !== ""),
  }));
  const several = new Set(notes.map(({ kind }) => kind)).size > 1;
  const common = new Map<string, readonly string[]>();
  for (const kind of new Set(notes.map((each) => each.kind))) {
    const alike = split.filter((each) => each.kind === kind);
    const [first] = alike;
    if (first === undefined || alike.length < 2 || (several && !kinds.includes(kind))) continue;
    const all = first.sentences.filter((each) => alike.every((other) => other.sentences.includes(each)));
    common.set(kind, all);
  }
  return {
    shared: [...new Set([...common.values()].flat())].join(" "),
    own: split.map(({ kind, sentences }) =>
      sentences.filter((each) => common.get(kind)?.includes(each) !== true).join(" "),
    ),
  };
}

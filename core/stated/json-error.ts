/** Deeper nesting than any document of ours; past it the place of an error is not looked for. */
const deepest = 200;

/**
 * Offset of the first character at which a text stops being JSON (RFC 8259), its length where it ends too early, or -1
 * where it is JSON. Engines word this place differently, or not at all; a person who edits by hand needs it.
 */
export function jsonErrorOffset(text: string): number {
  const space = /[ \t\n\r]*/y;
  const scalar = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
  const plainCharacters = /[ !#-[\]-\uffff]*/y;
  const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
  let at = 0;
  let failed = -1;

  const skip = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const length = pattern.exec(text)?.[0].length ?? 0;
    at += length;
    return length > 0;
  };
  const take = (character: string): boolean => {
    skip(space);
    if (text[at] !== character) return false;
    at += 1;
    return true;
  };
  const fail = (): boolean => {
    failed = at;
    return false;
  };
  const takeString = (): boolean => {
    if (!take('"')) return fail();
    do skip(plainCharacters);
    while (skip(escaped));
    if (text[at] !== '"') return fail();
    at += 1;
    return true;
  };
  const takeMember = (depth: number): boolean => takeString() && (take(":") || fail()) && takeValue(depth);
  const takeList = (close: string, item: (depth: number) => boolean, depth: number): boolean => {
    if (depth > deepest) return fail();
    if (take(close)) return true;
    do {
      if (!item(depth + 1)) return false;
    } while (take(","));
    return take(close) || fail();
  };
  const takeValue = (depth: number): boolean => {
    if (take("{")) return takeList("}", takeMember, depth);
    if (take("[")) return takeList("]", takeValue, depth);
    return text[at] === '"' ? takeString() : skip(scalar) || fail();
  };

  if (!takeValue(0)) return failed;
  skip(space);
  return at === text.length ? -1 : at;
}

/** What two lists hold together: the first as it is, then what only the second has. */
export function together<Each>(first: readonly Each[] = [], second: readonly Each[] = []): readonly Each[] {
  const known = new Set(first.map((each) => JSON.stringify(each)));
  return [...first, ...second.filter((each) => !known.has(JSON.stringify(each)))];
}

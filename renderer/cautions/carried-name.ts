let last = "";

/** Remembers who answered or read, for the next form of this sitting. */
export function carryName(name: string): void {
  last = name.trim();
}

/** The first name that is known: those given, then the one last written in this sitting; "" where there is none. */
export function carriedName(...known: readonly (string | undefined)[]): string {
  return known.find((each) => each !== undefined && each.trim() !== "") ?? last;
}

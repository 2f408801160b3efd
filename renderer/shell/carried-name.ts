let last = "";
let atMachine = "";

/** Remembers who said to be at the machine, or "" for nobody: forms begin with this name. */
export function nameAtMachine(name: string): void {
  atMachine = name;
  last = "";
}

/** Remembers who answered or read, for the next form of this sitting. */
export function carryName(name: string): void {
  last = name.trim();
}

/** The first name that is known: who is at the machine, those given, the one last written here; "" for none. */
export function carriedName(...known: readonly (string | undefined)[]): string {
  if (atMachine !== "") return atMachine;
  return known.find((each) => each !== undefined && each.trim() !== "") ?? last;
}

const storageKey = "counterpoise-athlete";

/** The athlete whose page was shown before another area was; a random identifier, "" for none. */
export function rememberedAthlete(): string {
  return sessionStorage.getItem(storageKey) ?? "";
}

export function rememberAthlete(athlete: string): void {
  sessionStorage.setItem(storageKey, athlete);
}

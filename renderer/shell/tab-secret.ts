import { words } from "../words/words.ts";

const prose = words.screens.lock;

/** What of the browser's tab the way to the secret looks at. */
export interface Tab {
  readonly location: { readonly hash: string; readonly pathname: string };
  readonly history: Pick<History, "replaceState">;
  /** Lives as long as the tab; undefined where the browser keeps nothing. */
  readonly storage: Pick<Storage, "getItem" | "setItem"> | undefined;
  readonly fetch: (address: string, init: RequestInit) => Promise<Response>;
}

const storageKey = "counterpoise-secret";

export const needsAnotherAddress = prose.needsAnotherAddress;

/**
 * The secret that requests of this tab carry: kept in the tab, so that reloading works, or had for the token in the
 * fragment, which is good once and leaves the address at once.
 * @returns undefined when this tab was opened with neither
 */
export async function secretOfTab({ location, history, storage, fetch }: Tab): Promise<string | undefined> {
  const token = location.hash.replace(/^#/, "");
  const kept = storage?.getItem(storageKey) ?? undefined;
  if (token === "") return kept;
  const response = await fetch("/secret", { method: "POST", headers: { "x-counterpoise-token": token } });
  history.replaceState(null, "", location.pathname);
  if (!response.ok) return kept;
  const secret = await response.text();
  storage?.setItem(storageKey, secret);
  return secret;
}

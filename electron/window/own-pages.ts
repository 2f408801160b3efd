/** The program's own scheme: its pages never have a web address. */
export const ownScheme = "counterpoise";

/** Where every page of the program lives. */
export const ownOrigin = `${ownScheme}://app`;

/** True for an address of the program's own pages. */
export function isOwnPage(url: string): boolean {
  // Compared as text: to the URL class the origin of an own scheme is "null", equal for every such scheme.
  return url === ownOrigin || url.startsWith(`${ownOrigin}/`);
}

/** True for what a page may load: own files, and pictures and files the page itself has made. */
export function isOwnRequest(url: string): boolean {
  return isOwnPage(url) || url.startsWith(`blob:${ownOrigin}/`) || url.startsWith("data:");
}

import { readFile, realpath } from "node:fs/promises";
import { extname, join, sep } from "node:path";

/** One file of the built screens. */
export interface RendererFile {
  readonly mediaType: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The kinds of file the built screens consist of; nothing else is ever served. */
const mediaTypes: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff": "font/woff",
  ".woff2": "font/woff2",
};

/**
 * Reads a file of the built screens by the path of its address ("/" is index.html).
 * @returns undefined for anything that is not a plain file inside `folder`, links that lead out of it included.
 */
export async function readRendererFile(folder: string, addressPath: string): Promise<RendererFile | undefined> {
  const path = decoded(addressPath === "/" ? "/index.html" : addressPath);
  if (path === undefined || !/^(\/[\w@+-][\w@.+-]*)+$/.test(path)) return undefined;
  const mediaType = mediaTypes[extname(path).toLowerCase()];
  if (mediaType === undefined) return undefined;
  try {
    const root = await realpath(folder);
    const file = await realpath(join(root, path));
    if (!file.startsWith(root + sep)) return undefined;
    return { mediaType, bytes: Uint8Array.from(await readFile(file)) };
  } catch {
    // Absent, a folder, not readable: to the outside it is all the same, not found.
    return undefined;
  }
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

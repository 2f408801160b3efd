import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A page on the disk that leads the browser to an address which no other user of the computer may read. */
export interface RedirectFile {
  readonly path: string;
  /** Takes the file and its folder away; once is enough. */
  remove(): void;
}

/**
 * Writes the page into a new folder (0700, the file 0600; on Windows the temporary folder is the user's own). What is
 * handed to a browser's command line, which every user can list, is then a path and nothing more.
 */
export function writeRedirectFile(address: string): RedirectFile {
  // The system makes the folder for its owner alone.
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-open-"));
  const path = join(folder, "open.html");
  writeFileSync(path, redirectPage(address), { mode: 0o600, flag: "wx" });
  return { path, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

const style = "body { font: 16px sans-serif; margin: 3rem; color-scheme: light dark; }";
const styleHash = createHash("sha256").update(style).digest("base64");

/** Loads nothing and sends no referrer; the token stands in the fragment, which is sent to nobody. */
function redirectPage(address: string): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta http-equiv="content-security-policy" content="default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'">
    <meta name="referrer" content="no-referrer">
    <meta http-equiv="refresh" content="0; url=${address}">
    <title>Counterpoise</title>
    <style>${style}</style>
  </head>
  <body>
    <p><a href="${address}" rel="noreferrer">Open Counterpoise</a></p>
  </body>
</html>
`;
}

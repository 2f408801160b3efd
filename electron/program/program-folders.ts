import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds package.json: the clone, or the application archive of a packaged program. */
export function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!isProgramFolder(folder)) {
    const above = dirname(folder);
    if (above === folder) throw new Error("The program's own folder has no package.json.");
    folder = above;
  }
  return folder;
}

/** The built screens. */
export function rendererFolder(): string {
  return join(programFolder(), "dist/renderer");
}

/** The demo world's recordings: at the root of a clone, among the resources of a packaged program. */
export function sampleTracesFolder(): string {
  const resources = (process as { readonly resourcesPath?: string }).resourcesPath;
  const packaged = resources === undefined ? undefined : join(resources, "sample-traces");
  return packaged !== undefined && existsSync(packaged) ? packaged : join(programFolder(), "sample-traces");
}

/** The font files of printed sheets: beside the built program, or where the installation put them. */
export function fontsFolder(): string {
  const built = join(programFolder(), "dist/fonts");
  return existsSync(built) ? built : join(programFolder(), "node_modules/dejavu-fonts-ttf/ttf");
}

function isProgramFolder(folder: string): boolean {
  const description = join(folder, "package.json");
  if (!existsSync(description)) return false;
  const parsed: unknown = JSON.parse(readFileSync(description, "utf8"));
  return typeof parsed === "object" && parsed !== null && "name" in parsed && parsed.name === "counterpoise";
}

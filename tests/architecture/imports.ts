import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's root folder. */
export const projectRoot = join(dirname(fileURLToPath(import.meta.url)), "../..");

/** One import of one source file. */
export interface ImportLine {
  /** Relative to the project's root, forward slashes. */
  readonly file: string;
  readonly line: number;
  /** As written for packages; relative to the project's root for the project's own files. */
  readonly target: string;
  readonly isPackage: boolean;
  readonly typeOnly: boolean;
}

/** Every TypeScript file below a folder, relative to the project's root. */
export function sourceFiles(folder: string): readonly string[] {
  return readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(projectRoot, join(entry.parentPath, entry.name)).replaceAll("\\", "/"))
    .sort();
}

/** Every import, re-export and dynamic import of a file, multi-line ones included. */
export function importsOf(file: string): readonly ImportLine[] {
  return importsIn(file, readFileSync(join(projectRoot, file), "utf8"));
}

/** The imports of a file that says this text, whether or not it is there. */
export function importsIn(file: string, text: string): readonly ImportLine[] {
  const pattern =
    /^(?:import|export)\s+(type\s)?[^;"']*?from\s+["']([^"']+)["']|^import\s+["']([^"']+)["']|\bimport\(\s*["']([^"']+)["']/gm;
  return [...text.matchAll(pattern)].map((match) => {
    const written = match[2] ?? match[3] ?? match[4] ?? "";
    const isPackage = !written.startsWith(".");
    const target = isPackage
      ? written
      : relative(projectRoot, resolve(projectRoot, dirname(file), written)).replaceAll("\\", "/");
    const line = text.slice(0, match.index).split("\n").length;
    return { file, line, target, isPackage, typeOnly: match[1] !== undefined };
  });
}

/** "file:line imports target", for a list of offenders. */
export function describeImport(each: ImportLine): string {
  return `${each.file}:${each.line} imports ${each.target}`;
}

import type { ImportLine } from "./imports.ts";

/** The circles of files that import each other, each in alphabetical order (Tarjan's strongly connected components). */
export function circlesAmong(imports: readonly ImportLine[]): readonly (readonly string[])[] {
  const targets = new Map<string, string[]>();
  for (const { file, target, isPackage } of imports) {
    if (isPackage) continue;
    targets.set(file, [...(targets.get(file) ?? []), target]);
  }
  const found: string[][] = [];
  const place = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const visit = (file: string): void => {
    place.set(file, place.size);
    lowest.set(file, place.get(file)!);
    open.push(file);
    for (const target of targets.get(file) ?? []) {
      if (!place.has(target)) visit(target);
      if (open.includes(target)) lowest.set(file, Math.min(lowest.get(file)!, lowest.get(target)!));
    }
    if (lowest.get(file) !== place.get(file)) return;
    const circle = open.splice(open.indexOf(file));
    if (circle.length > 1) found.push(circle.sort());
  };
  for (const file of targets.keys()) if (!place.has(file)) visit(file);
  return found;
}

import type { ZooFile } from "./zoo-file.ts";

/** The expected readings as JSON: one line a file, by name. */
export function zooTexts(files: readonly ZooFile[]): string {
  const lines = files.map(({ name, expected }) => `${JSON.stringify(name)}: ${JSON.stringify(expected)}`);
  return `{\n${lines.join(",\n")}\n}\n`;
}

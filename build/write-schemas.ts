import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { testKinds } from "../core/ground/test-kind.ts";
import { publishedSchemas } from "../core/stated/published-schemas.ts";

/**
 * Writes the published JSON Schemas again: those of what is read follow from the schemas that read it; the one of results
 * is kept by hand, but for the kinds of test, which are the facts'.
 *
 *   node build/write-schemas.ts
 */
const root = fileURLToPath(new URL("..", import.meta.url));
const resultFile = "core/sheet/result.schema.json";
const kinds = testKinds.map((kind) => `"${kind}"`).join(", ");

const schemas: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    Object.entries(publishedSchemas).map(([name, schema]) => [`core/stated/${name}`, JSON.stringify(schema, null, 2)]),
  ),
  [resultFile]: readFileSync(`${root}${resultFile}`, "utf8").replace(
    /("test": \{\s*"enum": )\[[^\]]*\]/,
    `$1[${kinds}]`,
  ),
};
for (const [file, schema] of Object.entries(schemas)) writeFileSync(`${root}${file}`, schema);
const biome = createRequire(import.meta.url).resolve("@biomejs/biome/bin/biome");
execFileSync(process.execPath, [biome, "format", "--write", ...Object.keys(schemas)], { cwd: root, stdio: "inherit" });

import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { testKinds } from "../core/ground/test-kind.ts";
import { publishedSchemas } from "../core/stated/published-schemas.ts";
import { hostRequests } from "../electron/boundary/host-requests.ts";

/**
 * Writes again what follows from the schemas: the published JSON Schemas of what is read, and the names of the boundary's
 * requests. The schema of results is kept by hand, but for the kinds of test, which are the facts'.
 *
 *   node build/write-schemas.ts
 */
const root = fileURLToPath(new URL("..", import.meta.url));
const resultFile = "core/sheet/result.schema.json";
const namesFile = "electron/boundary/request-names.ts";
const kinds = testKinds.map((kind) => `"${kind}"`).join(", ");

const names = Object.keys(hostRequests).map((name) => `"${name}"`);

const written: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    Object.entries(publishedSchemas).map(([name, schema]) => [`core/stated/${name}`, JSON.stringify(schema, null, 2)]),
  ),
  [resultFile]: readFileSync(`${root}${resultFile}`, "utf8").replace(
    /("test": \{\s*"enum": )\[[^\]]*\]/,
    `$1[${kinds}]`,
  ),
  [namesFile]: readFileSync(`${root}${namesFile}`, "utf8").replace(
    /(requestNames = )\[[^\]]*\]/,
    `$1[${names.join(",")}]`,
  ),
};
for (const [file, schema] of Object.entries(written)) writeFileSync(`${root}${file}`, schema);
const biome = createRequire(import.meta.url).resolve("@biomejs/biome/bin/biome");
execFileSync(process.execPath, [biome, "format", "--write", ...Object.keys(written)], { cwd: root, stdio: "inherit" });

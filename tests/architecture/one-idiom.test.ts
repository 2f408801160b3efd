import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const core = fileURLToPath(new URL("../../core/", import.meta.url));

/** The other way to leave a part out: `...(x !== undefined && { x })`. */
const otherIdiom = /\.\.\.\(\s*[^(){}]*!== undefined && \{/g;

test("a part that may be missing is left out in one way: x === undefined ? {} : { x }", () => {
  const found = readdirSync(core, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .flatMap((path) =>
      [...readFileSync(`${core}${path}`, "utf8").matchAll(otherIdiom)].map(([text]) => `${path}: ${text}`),
    );
  expect(found).toEqual([]);
  expect("...(x !== undefined && { x })".match(otherIdiom)).not.toBeNull();
});

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectRoot } from "./imports.ts";

/** Compiles one file under the core's own compiler options and returns what the compiler says. */
function compileInCore(source: string): { readonly status: number | null; readonly output: string } {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-pure-"));
  try {
    writeFileSync(join(folder, "sample.ts"), source);
    const options = { extends: join(projectRoot, "core/tsconfig.json"), include: [join(folder, "sample.ts")] };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(options));
    const compiler = join(projectRoot, "node_modules/typescript/bin/tsc");
    const { status, stdout } = spawnSync(process.execPath, [compiler, "-p", folder], { encoding: "utf8" });
    return { status, output: stdout };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test("a file of plain language features compiles in the core", () => {
  expect(compileInCore("export const sum = [1, 2].reduce((a, b) => a + b, 0);\n")).toEqual({ status: 0, output: "" });
});

test.each(["process", "document", "TextDecoder", "window", "console", "setTimeout", "Buffer", "fetch"])(
  "a file that uses %s does not compile in the core",
  (name) => {
    const { status, output } = compileInCore(`export const used = ${name};\n`);
    expect(status).not.toBe(0);
    expect(output).toContain(`'${name}'`);
  },
);

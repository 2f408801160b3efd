import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";

/**
 * Runs every check: types, lint and format, unused code, then all tests, the end-to-end ones in a real browser
 * included. Stops at the first kind of check that finds something.
 * @returns the exit code.
 */
export function runTests(root, runtime, filters) {
  const tool = (path, ...parameters) => ({
    command: runtime,
    parameters: [join(root, "node_modules", path), ...parameters],
  });
  const checks = [
    ...["core", "electron", "renderer", "tests"].map((project) => ({
      name: `types of ${project}`,
      ...tool("typescript/bin/tsc", "-p", project),
    })),
    { name: "lint and format", ...tool("@biomejs/biome/bin/biome", "ci", "--error-on-warnings", ".") },
    { name: "unused code", ...tool("knip/bin/knip.js", "--no-progress") },
    { name: "tests", ...tool("vitest/vitest.mjs", "run", "--config", "build/vitest.config.ts", ...filters) },
  ];
  // Programs that tests start must find the same Node first.
  const path = `${dirname(runtime)}${process.platform === "win32" ? ";" : ":"}${process.env.PATH ?? ""}`;
  for (const { name, command, parameters } of checks) {
    process.stderr.write(`— ${name}\n`);
    const { status } = spawnSync(command, parameters, {
      cwd: root,
      stdio: "inherit",
      env: { ...process.env, PATH: path, ELECTRON_OVERRIDE_DIST_PATH: "/nonexistent" },
    });
    if (status !== 0) {
      process.stderr.write(`The check "${name}" found something.\n`);
      return 1;
    }
  }
  return 0;
}

import { spawn } from "node:child_process";
import { dirname, join } from "node:path";

/**
 * Runs every check: types, lint and format, unused code, side by side; then all tests, the end-to-end ones in a real
 * browser included, unless one of the former found something.
 * @returns the exit code.
 */
export async function runTests(root, runtime, filters) {
  const checks = [
    ...["core", "electron", "renderer", "tests"].map((project) => ({
      name: `types of ${project}`,
      tool: ["typescript/bin/tsc", "-p", project],
    })),
    { name: "lint and format", tool: ["@biomejs/biome/bin/biome", "ci", "--error-on-warnings", "."] },
    { name: "unused code", tool: ["knip/bin/knip.js", "--no-progress"] },
  ];
  const results = await Promise.all(checks.map(({ tool }) => run(root, runtime, tool, "pipe")));
  let found = false;
  for (const [index, { status, output }] of results.entries()) {
    const { name } = checks[index];
    process.stderr.write(`— ${name}\n${output}`);
    if (status !== 0) process.stderr.write(`The check "${name}" found something.\n`);
    found ||= status !== 0;
  }
  return found ? 1 : tryTests(root, runtime, filters);
}

/**
 * Runs the tests whose path holds one of the words, and nothing else.
 * @returns the exit code.
 */
export async function tryTests(root, runtime, filters) {
  process.stderr.write("— tests\n");
  const vitest = ["vitest/vitest.mjs", "run", "--config", "build/vitest.config.ts", ...filters];
  const { status } = await run(root, runtime, vitest, "inherit");
  if (status === 0) return 0;
  process.stderr.write('The check "tests" found something.\n');
  return 1;
}

/** Runs one tool of node_modules; what it prints is kept, or goes where this process prints. */
function run(root, runtime, [tool, ...parameters], stdio) {
  // Programs that tests start must find the same Node first.
  const path = `${dirname(runtime)}${process.platform === "win32" ? ";" : ":"}${process.env.PATH ?? ""}`;
  const child = spawn(runtime, [join(root, "node_modules", tool), ...parameters], {
    cwd: root,
    stdio: ["ignore", stdio, stdio],
    env: { ...process.env, PATH: path, ELECTRON_OVERRIDE_DIST_PATH: "/nonexistent" },
  });
  let output = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding("utf8").on("data", (text) => {
      output += text;
    });
  }
  return new Promise((resolve) => {
    child.once("error", (error) => resolve({ status: undefined, output: `${output}${error.message}\n` }));
    child.once("close", (status) => resolve({ status, output }));
  });
}

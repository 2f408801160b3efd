import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { defineConfig } from "vitest/config";
import { ClosingLine } from "./tests/closing-line.ts";

const root = new URL("..", import.meta.url).pathname;
const screens = "tests/e2e/**/*.test.ts";
const host = "tests/electron/**/*.test.ts";
const everything = ["tests/**/*.test.ts", "tests/**/*.test.tsx"];
/** A module replaced for one file would stay replaced, or be loaded already, in a process that files share. */
const replacing = globSync(everything, { cwd: root }).filter((file) =>
  readFileSync(join(root, file), "utf8").includes("vi.mock("),
);

const limits = { testTimeout: 60_000, hookTimeout: 120_000 };
/** A whole walk through the screens, on a machine that is busy with something else. */
const walkLimits = { testTimeout: 300_000, hookTimeout: 120_000 };
const seeded = { ...limits, setupFiles: ["build/tests/seed-properties.ts"] };

/**
 * Hundreds of passphrases are weighed and made into keys there; passphrase-cost.test.ts and weigh-apart.test.ts of
 * tests/architecture have the true ones.
 */
const lightCost = {
  alias: [
    { find: /^.*\/passphrase-cost\.ts$/, replacement: join(root, "tests/electron/light-passphrase-cost.ts") },
    { find: /^.*\/weigh-apart\.ts$/, replacement: join(root, "tests/electron/light-weigh-apart.ts") },
  ],
};

/**
 * A worker for every core. Projects run in the order of their names: those that wait for a browser first, the small pure
 * ones last, so that both cores end together. Files share what a worker has loaded, which saves most of the time that
 * loading takes; the few that replace modules have a process each.
 */
export default defineConfig({
  root,
  test: {
    maxWorkers: "100%",
    reporters: ["default", new ClosingLine()],
    projects: [
      { test: { ...walkLimits, name: "end-to-end", include: [screens], pool: "forks", isolate: false } },
      {
        resolve: lightCost,
        test: { ...seeded, name: "host", include: [host], exclude: replacing, pool: "forks", isolate: false },
      },
      { resolve: lightCost, test: { ...seeded, name: "host, apart", include: replacing, pool: "forks" } },
      {
        test: {
          ...seeded,
          name: "pure",
          include: everything,
          exclude: [screens, host, ...replacing],
          pool: "threads",
          isolate: false,
        },
      },
    ],
  },
});

import { defineConfig } from "vitest/config";
import { ClosingLine } from "./closing-line.ts";

/** Unit tests run in Node; the end-to-end tests bring their own browser and stand in tests/e2e. */
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    exclude: ["tests/bench/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ["default", new ClosingLine()],
  },
});

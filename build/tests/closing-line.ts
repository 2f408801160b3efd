import type { Reporter, TestModule } from "vitest/node";
import { propertySeed } from "./seed-properties.ts";

/** Prints one plain closing line, so that whoever reads the output sees at a glance how many tests ran. */
export class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    let skipped = 0;
    for (const module of modules) {
      if (module.state() === "failed" && [...module.children.allTests()].length === 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === "passed") passed += 1;
        else if (state === "failed") failed += 1;
        else skipped += 1;
      }
    }
    process.stdout.write(`Property tests began at seed ${propertySeed} (COUNTERPOISE_SEED tries another).\n`);
    process.stdout.write(`${passed} passed, ${failed} failed, ${skipped} skipped\n`);
  }
}

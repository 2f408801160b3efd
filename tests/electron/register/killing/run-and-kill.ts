import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Line, Orders } from "./operations.ts";

const program = fileURLToPath(new URL("act-until-killed.ts", import.meta.url));
const lightCost = new URL("../../light-cost-hook.ts", import.meta.url).href;

/** How a run ended. */
export interface Run {
  readonly lines: readonly Line[];
  /** How long it was at work before it was killed. */
  readonly milliseconds: number;
}

/**
 * Starts the program under test and kills it: at its last step, after so long at work, or when it says that it is done.
 * @param milliseconds undefined where the step alone decides
 */
export function runAndKill(orders: Orders, milliseconds: number | undefined): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", lightCost, program, JSON.stringify(orders)], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    let text = "";
    let trouble = "";
    let atWorkSince: number | undefined;
    child.stdout.on("data", (data: Buffer) => {
      text += data.toString();
      if (atWorkSince === undefined && text.includes('"at work"')) {
        atWorkSince = performance.now();
        if (milliseconds !== undefined) setTimeout(() => child.kill("SIGKILL"), milliseconds);
      }
      if (text.includes('"done"') || (text.includes('"step"') && !orders.byOwnHand)) child.kill("SIGKILL");
    });
    child.stderr.on("data", (data: Buffer) => {
      trouble += data.toString();
    });
    child.on("error", reject);
    child.on("close", (_code, signal) => {
      if (signal !== "SIGKILL") return reject(new Error(`${orders.work} ended by itself: ${trouble}`));
      const whole = text.split("\n").slice(0, -1);
      const lines = whole.map((line) => JSON.parse(line) as Line);
      return resolve({ lines, milliseconds: performance.now() - (atWorkSince ?? performance.now()) });
    });
  });
}

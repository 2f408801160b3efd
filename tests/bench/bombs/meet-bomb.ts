// Gives one bomb to the program's own reader and prints what became of it. Run by try-bomb.ts: meet-bomb.ts KIND FOLDER
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readRequestBody } from "../../../electron/boundary/request-body.ts";
import { readLayouts } from "../../../electron/command/read-layouts.ts";
import { readDescription } from "../../../electron/files/read-folder.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { readPreferences } from "../../../electron/register-host/preferences.ts";
import { told } from "../../told.ts";
import { type BombKind, placeOf } from "./make-bombs.ts";

const [kind, folder = ""] = process.argv.slice(2) as [BombKind, string];
const place = placeOf(folder, kind);
const register = await openRegister(join(folder, "register.sqlite"), { create: true });
const idle = process.memoryUsage().rss;
const began = performance.now();

/** Linux counts what the starting process had into the other figure. */
function highestBytes(): number {
  if (process.platform !== "linux") return process.resourceUsage().maxRSS * 1024;
  return Number(/VmHWM:\s*(\d+)/.exec(readFileSync("/proc/self/status", "utf8"))?.[1]) * 1024;
}

async function meet(): Promise<string> {
  if (kind === "archive") return JSON.stringify(await mergeArchive(register, place));
  if (kind === "layout") return JSON.stringify(readLayouts(place).length);
  if (kind === "preferences") return `the shipped preferences: ${JSON.stringify(readPreferences(folder))}`;
  if (kind === "request") return `${typeof readRequestBody(readFileSync(place))}`;
  const { descriptionFindings } = readDescription({ directory: folder, names: [], loose: false });
  return `${told(descriptionFindings.at(-1))?.message}`;
}

const sentence = await meet().catch((error: unknown) =>
  error instanceof Error ? `${error.name}: ${error.message}` : `${error}`,
);
const peakMegabytes = (highestBytes() - idle) / 1e6;
const seconds = (performance.now() - began) / 1000;
register.close();
console.log(JSON.stringify({ sentence: sentence.replaceAll(folder, ""), peakMegabytes, seconds }));

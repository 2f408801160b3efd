import { readFileSync, writeSync } from "node:fs";
import { weaknessOf } from "./weakness.ts";

const [standardInput, standardOutput] = [0, 1];

/** Weighs the passphrase it reads, says what makes it weak and ends, and everything made of the passphrase with it. */
const weakness = await weaknessOf({ passphrase: readFileSync(standardInput), known: process.argv.slice(2) });
writeSync(standardOutput, JSON.stringify({ weakness }));

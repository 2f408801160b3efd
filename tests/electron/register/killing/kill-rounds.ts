import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { lookAfterwards, lookBefore } from "./look-afterwards.ts";
import { makeBeginnings } from "./make-beginnings.ts";
import { type Beginning, type Line, type Operation, operations, placesIn, type Work } from "./operations.ts";
import { runAndKill } from "./run-and-kill.ts";
import { seededDraw } from "./seeded-draw.ts";
import { type Signs, signsOf } from "./signs.ts";

/** One kill and what was found after it. */
export interface Round {
  readonly round: number;
  readonly operation: string;
  /** The step it fell at; undefined where it fell at a random moment, or after everything was done. */
  readonly step: string | undefined;
  readonly wasDone: boolean;
  /** What was broken off was broken off again while it was being finished; the step of that. */
  readonly again: string | undefined;
  /** One sentence for everything that was not as it must be. */
  readonly faults: readonly string[];
}

/** Prime to the number of operations, and large: few rounds go through the whole list of them, and many through all. */
const stride = 10;
/** One of so many rounds falls at a random moment instead of a step. */
const oneAtARandomMoment = 4;
/** One of so many is killed again while the next opening finishes what the first kill broke off. */
const oneKilledAgain = 4;

/** How far a kind of work was seen to go: what is drawn for its kills lies within. */
interface Reach {
  steps: number;
  milliseconds: number;
}

interface Options {
  readonly seed: number;
  /** Rounds on their way at the same time. */
  readonly lanes?: number;
  readonly tell?: (round: Round) => void;
}

/**
 * Lets a program do each operation on a register of its own again and again, kills it at another step or moment, and looks
 * whether everything that is promised of a register holds.
 */
export async function killRounds(rounds: number, { seed, lanes = 2, tell }: Options): Promise<readonly Round[]> {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-kill-"));
  try {
    const beginnings = await makeBeginnings(join(folder, "beginnings"));
    const signs = new Map(operations.map((each) => [each, signsOf(each, beginnings)]));
    const reaches = new Map<string, Reach>();
    const found: Round[] = [];
    let next = 0;
    const lane = async () => {
      while (next < rounds) {
        const round = next;
        next += 1;
        const operation = operations[(round * stride) % operations.length]!;
        const place = join(folder, `round-${round}`);
        const made = await oneRound(round, seed, operation, {
          place,
          beginnings,
          signs: signs.get(operation)!,
          reaches,
        });
        rmSync(place, { recursive: true, force: true });
        found.push(made);
        tell?.(made);
      }
    };
    await Promise.all(Array.from({ length: lanes }, lane));
    return found.toSorted((one, other) => one.round - other.round);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Surroundings {
  readonly place: string;
  readonly beginnings: ReadonlyMap<Beginning, string>;
  readonly signs: Signs;
  readonly reaches: Map<string, Reach>;
}

async function oneRound(round: number, seed: number, operation: Operation, around: Surroundings): Promise<Round> {
  const { place, beginnings, signs, reaches } = around;
  const draw = seededDraw(seed + round);
  cpSync(beginnings.get(operation.begins)!, place, { recursive: true });
  const places = placesIn(place);
  const kill = (work: Work, passphrase: string | undefined, name: string) =>
    killOnce(place, work, passphrase, name, reaches, draw);
  const lines = await kill(operation.work, operation.before, operation.name);
  const made = { round, operation: operation.name, step: stepIn(lines), wasDone: isDone(lines) };
  let again: string | undefined;
  try {
    let found = lookBefore(operation, places, signs);
    const faults = [...found.faults];
    if (draw(oneKilledAgain) === 0) {
      again = stepIn(await kill("open", found.passphrase, `finish ${operation.name}`)) ?? "a random moment";
      found = lookBefore(operation, places, signs);
    }
    faults.push(...(await lookAfterwards(operation, places, signs, found, lines)));
    return { ...made, again, faults: [...new Set(faults)] };
  } catch (error) {
    return { ...made, again, faults: [error instanceof Error ? (error.stack ?? error.message) : String(error)] };
  }
}

async function killOnce(
  place: string,
  work: Work,
  passphrase: string | undefined,
  name: string,
  reaches: Map<string, Reach>,
  draw: (below: number) => number,
): Promise<readonly Line[]> {
  const reach = reaches.get(name) ?? { steps: 8, milliseconds: 100 };
  reaches.set(name, reach);
  const isAtStep = draw(oneAtARandomMoment) > 0;
  const lastStep = isAtStep ? 1 + draw(reach.steps) : 0;
  const moment = isAtStep ? undefined : (draw(1000) / 1000) * reach.milliseconds;
  const orders = { folder: place, work, seed: draw(1e6), lastStep, byOwnHand: draw(2) === 0 };
  const { lines, milliseconds } = await runAndKill(
    { ...orders, ...(passphrase !== undefined && { passphrase }) },
    moment,
  );
  const done = lines.find((line) => line.what === "done");
  if (done !== undefined) {
    reach.steps = Math.max(1, done.steps);
    reach.milliseconds = milliseconds;
  } else if (lastStep > reach.steps / 2) reach.steps = Math.ceil(reach.steps * 1.5);
  else if (moment !== undefined && moment > reach.milliseconds / 2) reach.milliseconds *= 1.5;
  return lines;
}

function stepIn(lines: readonly Line[]): string | undefined {
  return lines.find((line) => line.what === "step")?.step;
}

function isDone(lines: readonly Line[]): boolean {
  return lines.some(({ what }) => what === "done");
}

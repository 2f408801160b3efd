import type { HostRequestName } from "../boundary/host-api.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import { requestNames } from "../boundary/request-names.ts";
import { onlyTells } from "../handlers/whole-requests.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { type WorkBudgets, workBudgets } from "./budgets.ts";
import { endWords, notDoneWords } from "./end-words.ts";
import { HeldListener } from "./held-state.ts";
import { HostThread, type ThreadEnd, type Waiting } from "./host-thread.ts";
import type { HostWorkerData } from "./messages.ts";
import { overwriteFreed } from "./overwrite-freed.ts";

/** The host's handlers on a thread of their own. */
export interface RemoteHandlers {
  readonly handlers: HostHandlers;
  /** Ends the thread; what waits for an answer is told so. */
  close(): Promise<void>;
}

/** A file that ended the thread this often is not opened any more. */
const mostEnds = 2;

/** Threads that end one after the other without one answer are not started again before somebody asks. */
const mostFruitless = 3;

/** What runs on the working thread. Beside this module: as it was written, or built into the folder of the programs. */
function workerFile(): URL {
  const own = import.meta.url;
  return new URL(own.endsWith(".ts") ? "host-worker.ts" : "host-worker.js", own);
}

export interface HostWorkerOptions {
  readonly budgets?: WorkBudgets;
  /** The program of the thread. */
  readonly entry?: URL;
}

/**
 * Starts the thread that holds the workspace; requests are checked before they are sent there, as anywhere. A thread that
 * was ended, by a lock, by a budget or by itself, gives way to a new one that goes on with what was open.
 */
export function startHostWorker(data: HostWorkerData, options: HostWorkerOptions = {}): RemoteHandlers {
  const supervisor = new Supervisor(data, { budgets: workBudgets, entry: workerFile(), ...options });
  return {
    handlers: Object.fromEntries(
      requestNames.map((name) => [name, (request: unknown) => supervisor.ask(name, request)]),
    ) as unknown as HostHandlers,
    close: () => supervisor.close(),
  };
}

class Supervisor {
  readonly #data: HostWorkerData;
  readonly #options: Required<HostWorkerOptions>;
  readonly #held = new HeldListener();
  /** How often each file ended the thread, by its hash. */
  readonly #ends = new Map<string, number>();
  #thread: HostThread | undefined;
  #words = "";
  #fruitless = 0;
  #isClosed = false;

  constructor(data: HostWorkerData, options: Required<HostWorkerOptions>) {
    this.#data = data;
    this.#options = options;
    this.#thread = this.#begin(false);
  }

  ask(name: HostRequestName, request: unknown): Promise<unknown> {
    return new Promise((resolve, reject) => {
      if (this.#isClosed) return reject(new Error("The thread that holds the recordings has ended."));
      const answered = (reply: unknown) => {
        this.#fruitless = 0;
        resolve(reply);
      };
      this.#give({ name, request, resolve: answered, reject });
    });
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await this.#thread?.end();
  }

  #give(asked: Waiting): void {
    this.#thread ??= this.#begin(true);
    this.#thread.ask(asked);
  }

  #begin(isAgain: boolean): HostThread {
    const held = this.#held.state;
    const putAside = [...this.#ends].flatMap(([sha256, ends]) => (ends >= mostEnds ? [sha256] : []));
    const restored = isAgain ? { restored: { ...(held && { held }), words: this.#words, putAside } } : {};
    return new HostThread({ ...this.#data, ...restored }, this.#options, {
      held: (change) => this.#held.hear(change),
      ended: (end) => this.#ended(end),
    });
  }

  #ended(end: ThreadEnd): void {
    this.#thread = undefined;
    if (this.#isClosed) {
      for (const asked of end.waiting) asked.reject(new Error("The thread that holds the recordings has ended."));
      return;
    }
    const [first, ...later] = end.waiting;
    if (end.kind === "locked") {
      this.#words = "";
      overwriteFreed();
    } else {
      if (end.reason !== undefined) console.error(end.reason);
      if (end.file !== undefined) this.#ends.set(end.file.sha256, (this.#ends.get(end.file.sha256) ?? 0) + 1);
      this.#words = endWords(end, this.#held.state?.register);
      this.#fruitless += 1;
    }
    if (this.#fruitless < mostFruitless) this.#thread = this.#begin(true);
    if (first !== undefined) this.#afterEnd(first, end, true);
    for (const asked of later) this.#afterEnd(asked, end, false);
  }

  /** What only tells is asked of the new thread; what would have changed something is for the person to ask again. */
  #afterEnd(asked: Waiting, end: ThreadEnd, wasFirst: boolean): void {
    if (end.kind === "locked" && asked.name === "register.lock") this.#give({ ...asked, name: "workspace.read" });
    else if (wasFirst && end.kind !== "locked") asked.reject(new RequestRefused(this.#words));
    else if (onlyTells(asked.name)) this.#give(asked);
    else asked.reject(new RequestRefused(notDoneWords(end)));
  }
}
